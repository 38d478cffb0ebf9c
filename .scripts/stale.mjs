// Writes everything that is generated into a temporary folder and fails when the tree holds something else.
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { generators } from './generated.mjs';
import { root } from './root.mjs';

mkdirSync(join(root, '.cache'), { recursive: true });
const fresh = mkdtempSync(join(root, '.cache', 'stale-'));
const differences = [];
try {
  for (const generator of generators) {
    await generator.write(fresh);
    for (const path of generator.paths) {
      const files = new Set([...filesUnder(join(root, path)), ...filesUnder(join(fresh, path))]);
      for (const file of files) {
        const [committed, wanted] = [root, fresh].map((folder) => text(join(folder, path, file)));
        if (committed !== wanted) differences.push(`${join(path, file)} (${generator.name})`);
      }
    }
  }
} finally {
  rmSync(fresh, { recursive: true });
}

if (differences.length > 0) {
  console.error(`stale: ${differences.length} generated file(s) differ from their source:`);
  for (const difference of differences) console.error(`  ${difference}`);
  console.error('stale: run `npm run generate` and commit what it writes.');
  process.exit(1);
}
console.log('stale: every generated file agrees with its source');

/** Paths of the files under a folder, relative to it; the folder may be a file ('' then) or absent. */
function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return [''];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(path.length + 1));
}

function text(path) {
  return existsSync(path) ? readFileSync(path, 'utf8').replaceAll('\r\n', '\n') : undefined;
}
