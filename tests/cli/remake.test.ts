import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dryfit } from '../support/command.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dryfit-remake-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const remake = (...words: readonly string[]) =>
  dryfit('remake', 'examples/periodicals.joinery', 'Library', ...words, '--out', folder);
const at = (name: string) => join(folder, 'job-Library/remakes', name);
const wordsOf = (name: string) =>
  [...readFileSync(at(name), 'utf8').matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, words]) => words ?? '');
const NARROW = 'lh-of-Periodicals-wide-450-deep-320';

describe('dryfit remake', () => {
  it('writes the pages and the label of one piece, and tells what no text knows', async () => {
    const { code, out, err } = await remake('lh of Periodicals(wide = 450)', '--number', '2');
    expect(code).toBe(0);
    expect(out).toMatch(/^wrote \d+ pages to /);
    const words = wordsOf(`${NARROW}.html`).join('\n');
    expect(words).toContain('lh, birch18: 720 x 320 x 17.7, the grain along the first.');
    expect(words).toContain('groove in the right face, near wall 16 from the rear edge, 6 wide, 8 deep');
    expect(words).toContain('1 × lh');
    // Of its mates nothing but their names: no shelf, top or base is to be milled.
    expect(words).not.toMatch(/\d × (rh|top|base|shelf|back)\b/);
    expect(words).toContain('rh is its mirror image');
    expect(err).toContain('rh is its mirror image');
    expect(err).toContain('what was trimmed, or cut to fit at the bench, stands in no text');
    const label = wordsOf(`${NARROW}-label.html`);
    expect(label.filter((one) => one === 'lh')).toHaveLength(1);
    expect(label.join('\n')).toContain('2 of 2');
    for (const name of [NARROW, `${NARROW}-label`]) expect(existsSync(at(`${name}.pdf`))).toBe(true);
  });

  it('keeps the sheets of pieces made again before, and those of the job', async () => {
    await dryfit('sheets', 'examples/periodicals.joinery', '--out', folder);
    await remake('lh of Periodicals(wide = 450)');
    await remake('shelf of Periodicals(wide = 600)');
    await dryfit('build', 'examples/periodicals.joinery', '--out', folder);
    expect(readdirSync(join(folder, 'job-Library/remakes'))).toHaveLength(8);
    expect(readdirSync(join(folder, 'job-Library/sheets'))).toContain('sheets.pdf');
  });

  it('takes a name that is only one piece’s, and what the code of a label says', async () => {
    expect((await remake('lh of Periodicals(deep = 320)')).code).toBe(0);
    expect((await remake('Library/Periodicals(deep=320, wide=450)/2/rh')).code).toBe(0);
    expect(wordsOf('rh-of-Periodicals-wide-450-deep-320-label.html').join('\n')).toContain('2 of 2');
    const { code, err } = await remake('lh');
    expect([code, err]).toEqual([
      2,
      expect.stringContaining(
        '"lh of Periodicals(wide = 600, deep = 560)", "lh of Periodicals(wide = 450, deep = 320)"',
      ),
    ]);
  });

  it.each([
    ['shlf', 'did you mean shelf?'],
    ['wardrobe', 'there is back, base, lh, rh, shelf, top'],
    ['lh of Bookcase', 'there is no lh of Bookcase'],
    ['lh of Periodicals(wide = 500)', 'there is no lh of Periodicals(wide = 500)'],
    ['lh of Periodicals(wide)', 'a parameter is written as in'],
    ['Library/Periodicals/9/lh', 'there is no part'],
  ])('does not know %s and says what there is', async (words, told) => {
    const { code, out, err } = await remake(words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(told);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('knows how many cabinets there are', async () => {
    const { code, err } = await remake('lh of Periodicals(wide = 600)', '--number', '5');
    expect([code, err]).toEqual([2, expect.stringContaining('makes 4 of Periodicals')]);
  });
});
