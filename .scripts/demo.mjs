// npm run demo: the main job on one example, as a user would run it.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from './root.mjs';

const example = 'examples/periodicals.joinery';
const out = join(root, '.cache/demo');
const cli = join(root, 'packages/cli/bin/dryfit.js');

rmSync(out, { recursive: true, force: true });
dryfit('check', example);
dryfit('build', example, '--out', relative(root, out));
for (const file of readdirSync(out, { recursive: true, encoding: 'utf8' }).sort()) {
  if (!file.endsWith('.md')) continue;
  console.log(`\n----- ${relative(root, join(out, file))}\n`);
  console.log(readFileSync(join(out, file), 'utf8').trimEnd());
}

function dryfit(...words) {
  console.log(`\n$ dryfit ${words.join(' ')}`);
  const run = spawnSync(process.execPath, [cli, ...words], { cwd: root, stdio: 'inherit' });
  if (run.status !== 0) process.exit(run.status ?? 1);
}
