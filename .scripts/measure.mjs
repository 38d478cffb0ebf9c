// npm run measure [-- --write] [-- --rounds N] [-- --only NAME]: what the joinery costs beside the language alone, how the
// server does beside others, what clashes cost; --write commits the figures to a file.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'esbuild';
import { root } from './root.mjs';

const folder = join(root, '.cache/measure');
const node = { bundle: true, platform: 'node', conditions: ['source'], logLevel: 'warning', target: 'node20' };
await import('./bundle.mjs');
await build({
  ...node,
  entryPoints: [join(root, 'tests/measure/servers/bare-server.ts')],
  outfile: join(folder, 'bare.cjs'),
  format: 'cjs',
  minify: true,
});
await build({
  ...node,
  entryPoints: [join(root, 'tests/measure/measure.ts')],
  outfile: join(folder, 'measure.mjs'),
  format: 'esm',
  loader: { '.joinery': 'text' },
  external: ['manifold-3d', 'highs'],
  // Some of what is bundled is CommonJS and asks for Node's own modules by name.
  banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
});
const run = spawnSync(process.execPath, ['--expose-gc', join(folder, 'measure.mjs'), ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
});
process.exit(run.status ?? 1);
