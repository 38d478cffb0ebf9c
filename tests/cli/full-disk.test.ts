import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** A device that takes nothing, as a full disk does. */
const FULL = '/dev/full';

it.runIf(existsSync(FULL))('says that what was printed did not arrive, and does not end as if it had', () => {
  const out = openSync(FULL, 'w');
  const { status, stderr } = spawnSync(
    process.execPath,
    ['packages/cli/bin/dryfit.js', 'build', 'examples/bookcase.joinery'],
    { cwd: root, stdio: ['ignore', out, 'pipe'], encoding: 'utf8' },
  );
  closeSync(out);
  expect({ status, stderr }).toEqual({ status: 2, stderr: 'dryfit: cannot print: no space left on the disk\n' });
});
