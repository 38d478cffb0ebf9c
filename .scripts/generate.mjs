// npm run generate: writes everything that is generated into the tree.
import { generators, root } from './generated.mjs';

for (const generator of generators) {
  console.log(`generate: ${generator.name}`);
  await generator.write(root);
}
