// npm run clash-oracle [-- --cases N] [-- --fresh]: random assemblies against meshes of them, 100,000 unless told; goes
// on where it was stopped, and keeps what it has come to in tests/solids/campaign.json.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'esbuild';
import { root } from './root.mjs';

const outfile = join(root, '.cache/campaign.mjs');
await build({
  entryPoints: [join(root, 'tests/solids/campaign.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  conditions: ['source'],
  external: ['manifold-3d'],
  logLevel: 'warning',
});
const run = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], { cwd: root, stdio: 'inherit' });
process.exit(run.status ?? 1);
