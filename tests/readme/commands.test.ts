import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { root } from '../house/sources.js';
import { blocks, readme } from './blocks.js';

const folder = mkdtempSync(join(tmpdir(), 'dryfit-readme-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true });

/** The change that the README asks for before its second command. */
const periodicals = readFileSync(join(root, 'examples/periodicals.joinery'), 'utf8');
const [, number = '', instead = ''] = /set the back in by (\d+) instead of (\d+)/.exec(readme) ?? [];
writeFileSync(
  join(folder, 'examples/cabinet.joinery'),
  periodicals.replace(`set back ${instead} from`, `set back ${number} from`),
);

function run(words: readonly string[]) {
  const bin = join(root, 'packages/cli/bin/dryfit.js');
  return spawnSync(process.execPath, [bin, ...words], { cwd: folder, encoding: 'utf8' });
}

test.each(blocks('console').map(({ text }) => text.split('\n')))(
  '%s says what stands below it',
  (command, ...lines) => {
    const words = /^\$ npx dryfit (.*)$/.exec(command ?? '')?.[1]?.split(' ') ?? [];
    const said = run(words).stdout.split('\n');
    const shown = lines.filter((line) => line !== '…' && line !== '');
    expect(shown.length).toBeGreaterThan(4);
    let at = -1;
    for (const line of shown) {
      const next = said.indexOf(line, at + 1);
      expect(next, `"${line}" after "${said[at] ?? 'the beginning'}"`).toBeGreaterThan(at);
      at = next;
    }
  },
);

test('with an error nothing is built; put right, the tables are', () => {
  const words = /`npx dryfit (build examples\/cabinet\.joinery [^`]*)`/.exec(readme)?.[1]?.split(' ') ?? [];
  expect(run(words).status).toBe(1);
  expect(existsSync(join(folder, 'tables'))).toBe(false);
  writeFileSync(join(folder, 'examples/cabinet.joinery'), periodicals);
  expect(run(words).status).toBe(0);
  expect(existsSync(join(folder, 'tables/Periodicals/fit.json'))).toBe(true);
});

test('every npm script and every file that is named is there', () => {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  for (const [, name = ''] of readme.matchAll(/npm (?:run )?((?<=run )[a-z:-]+|test)/g))
    expect(scripts).toHaveProperty(name);
  for (const [, path = ''] of readme.matchAll(/\]\(([^)#:]+)\)/g))
    expect(existsSync(join(root, path)), path).toBe(true);
  for (const [, path = ''] of readme.matchAll(/`(packages\/[^`\s]+)`/g))
    expect(existsSync(join(root, path)), path).toBe(true);
});

test('the cabinet that it shows is the example', () => {
  const shown = blocks('joinery')[0]?.text ?? '';
  const lines = periodicals.split('\n');
  for (const line of shown.split('\n')) expect(lines).toContain(line);
});
