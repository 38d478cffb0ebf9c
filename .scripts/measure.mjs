// npm run measure [-- --write]: what the joinery costs beside the language alone; --write commits the figures to a file.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'esbuild';
import { root } from './root.mjs';

const outfile = join(root, '.cache/measure/measure.mjs');
await build({
  entryPoints: [join(root, 'tests/measure/measure.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  conditions: ['source'],
  logLevel: 'warning',
  // Some of what is bundled is CommonJS and asks for Node's own modules by name.
  banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
});
const run = spawnSync(process.execPath, ['--expose-gc', outfile, ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
});
process.exit(run.status ?? 1);
