import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { dryfit } from '../support/command.js';
import { examples } from '../support/examples.js';

/**
 * What every example comes to, as `dryfit` prints and writes it. `npm run baselines` rewrites these files; a change
 * to one of them is a change to what a shop would make, and wants a reason in the commit.
 */
const baseline = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const folderOf = (name: string): string => name.replace(/\.joinery$/, '');

/** Files below a folder with forward slashes, in order. */
function filesBelow(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .sort();
}

/** Baselines for which nothing is made any more: they are to be deleted by hand. */
const orphans = (folder: string, wanted: readonly string[]): string[] =>
  filesBelow(baseline(folder)).filter((path) => !wanted.includes(path));

const files = examples();
const made = files.filter(({ text }) => /^cabinet /m.test(text));

describe.each(made.map(({ name }) => name))('%s', (name) => {
  test('has no findings', async () => {
    const { code, out, err } = await dryfit('check', `examples/${name}`);
    expect(err).toBe('');
    expect(out).toBe('no findings in 1 file\n');
    expect(code).toBe(0);
  });

  test('comes to the tables, figures and drawings of its baseline', async () => {
    const out = mkdtempSync(join(tmpdir(), 'dryfit-baseline-'));
    try {
      for (const command of ['build', 'draw']) {
        const { code, err } = await dryfit(command, `examples/${name}`, '--out', out);
        expect([code, err]).toEqual([0, '']);
      }
      const written = filesBelow(out).filter((path) => /(\.md|fit\.json|\.svg)$/.test(path));
      for (const path of written) {
        await expect(readFileSync(join(out, path), 'utf8')).toMatchFileSnapshot(baseline(`${folderOf(name)}/${path}`));
      }
      expect(orphans(folderOf(name), written)).toEqual([]);
    } finally {
      rmSync(out, { recursive: true, force: true });
    }
  });
});

test.each(files.map(({ name, text }) => [name, text]))('%s is laid out as the formatter lays it out', async (name) => {
  const { code, err } = await dryfit('format', '--check', `examples/${name}`);
  expect([code, err]).toEqual([0, '']);
});

const broken = existsSync(baseline('../../examples/broken')) ? examples('broken') : [];

test('every baseline has its example', () => {
  const folders = [...made.map(({ name }) => folderOf(name)), 'broken'];
  const top = readdirSync(baseline('.'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
  expect(top.map((entry) => entry.name).filter((name) => !folders.includes(name))).toEqual([]);
  expect(
    orphans(
      'broken',
      broken.map(({ name }) => `${folderOf(name)}.txt`),
    ),
  ).toEqual([]);
});

describe.each(broken.map(({ name }) => name))('broken/%s', (name) => {
  test('says what its baseline says', async () => {
    const { code, out, err } = await dryfit('check', `examples/broken/${name}`);
    expect(err).toBe('');
    expect(code === 0 || code === 1).toBe(true);
    await expect(out).toMatchFileSnapshot(baseline(`broken/${folderOf(name)}.txt`));
  });
});
