// npm run generate [WORD]: writes everything that is generated into the tree, or what has WORD in its name.
import { generators } from './generated.mjs';
import { root } from './root.mjs';

const word = process.argv[2] ?? '';
for (const generator of generators.filter(({ name }) => name.includes(word))) {
  console.log(`generate: ${generator.name}`);
  await generator.write(root);
}
