// npm run demo: the main job on one example, and one example that cannot be made, as a user would run them.
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from './root.mjs';

const example = 'examples/periodicals.joinery';
const cabinet = 'Periodicals';
const out = join(root, '.cache/demo');

rmSync(out, { recursive: true, force: true });
dryfit(0, 'check', example);
dryfit(0, 'build', example, '--out', relative(root, out));

const tables = ['parts', 'slots', 'spacers', 'stops'].map((name) => join(out, cabinet, `${name}.md`));
for (const [at, file] of tables.entries()) {
  const [table, cautions] = readFileSync(file, 'utf8')
    .trimEnd()
    .split(/\n(?=\*\*Before you start)/);
  console.log(`\n--- ${relative(root, file)}\n\n${table.trimEnd()}`);
  // Every sheet carries its cautions; on one screen the last sheet's are enough.
  if (at === tables.length - 1 && cautions !== undefined) console.log(`\n${cautions}`);
}

dryfit(0, 'explain', example, 'shelf');
dryfit(1, 'check', 'examples/broken/slot-near-edge.joinery');

/** Runs the command line and prints the command with what it says; ends the demo when it does not end as expected. */
function dryfit(status, ...words) {
  console.log(`\n$ dryfit ${words.join(' ')}`);
  const run = spawnSync(process.execPath, [join(root, 'packages/cli/bin/dryfit.js'), ...words], {
    cwd: root,
    stdio: 'inherit',
  });
  if (run.status === status) return;
  console.error(`demo: dryfit ${words[0]} ended with ${run.status}, expected ${status}`);
  process.exit(1);
}
