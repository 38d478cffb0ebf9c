import { planWork } from '@dryfit/engine';
import { type Page, type Paper, sheetPages } from '@dryfit/output';
import { describe, expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { BEAMED, withShop } from '../support/own-shop.js';
import { examineText } from '../support/read.js';
import { wordsOn } from './faults.js';

/** The cover of a job of so many lines. */
async function coverOf(text: string, lines: number, paper: Paper = 'A4', units: 'mm' | 'in' = 'mm'): Promise<Page[]> {
  const { results } = await examineText(text);
  const items = Array.from({ length: lines }, (_, i) => {
    const result = results[i % results.length];
    if (!result) throw new Error('the text has no cabinet');
    return { result, count: i + 1 };
  });
  const pages = sheetPages({ title: ['job Test'], items, plan: await planWork(items), errors: 0 }, paper, { units });
  const [first] = pages;
  const more = pages.filter(({ title }) => /, cover \d+ of \d+$/.test(title));
  return more.length > 0 ? more : first ? [first] : [];
}

const all = (pages: readonly Page[]): string =>
  pages
    .flatMap(wordsOn)
    .map(({ text }) => text)
    .join('\n');

describe('the cover of a job', () => {
  test.each(['A4', 'Letter'] as const)(
    'goes on overleaf on %s: nothing stands in the cautions or is left alone',
    async (paper) => {
      const counts: number[] = [];
      // One line more at a time, so that each heading comes to stand at every height of the page.
      for (let lines = 8; lines < 34; lines++) {
        const pages = await coverOf(exampleText('periodicals.joinery'), lines, paper);
        counts.push(pages.length);
        for (const page of pages) {
          const words = wordsOn(page);
          const cautions = words.filter(({ text }) => /^Isolate|come before/.test(text));
          expect(cautions.length).toBeGreaterThan(0);
          const caution = Math.min(...cautions.map(({ y }) => y));
          const flow = words.filter(({ size, y }) => y < caution && size < 11);
          expect(Math.max(...flow.map(({ y }) => y))).toBeLessThan(caution - 3.5);
          // The lowest words are no heading.
          expect(flow.reduce((a, b) => (b.y > a.y ? b : a)).bold ?? false).toBe(false);
        }
        const told = all(pages);
        for (const heading of ['Cabinets', 'To have at hand', 'Set-ups, in this order'])
          expect(told).toContain(heading);
        expect(told.match(/× Periodicals/g)).toHaveLength(lines);
      }
      expect(new Set(counts).size).toBeGreaterThan(1);
    },
  );

  test('tells what is set up, and in which set-ups', async () => {
    const pages = await coverOf(exampleText('periodicals.joinery'), 1);
    const told = all(pages);
    expect(told).toMatch(/joiner, for biscuit20\nset-ups 1 to \d/);
    expect(told).toMatch(/deep5: lines 70, 180, 270, 420, 500\nset-ups 1 to \d/);
    expect(told).toMatch(/12 \+ 10 = 22, going from fence to fence\nset-up 1/);
  });

  test('asks for a second stack where pieces lie at both fences at once; where the shop has one, it goes to and fro', async () => {
    const narrow = exampleText('periodicals.joinery').replace('deep = 560', 'deep = 320');
    const told = (spacers: string) =>
      coverOf(withShop(narrow, BEAMED.replace('6, 10, 12, 19, 25', spacers)), 3).then(all);
    const once = await told('6, 10, 12');
    expect(once).toMatch(/1 of 12, 1 of 10\nin all/);
    expect(once).toMatch(/12 \+ 10 = 22, going from fence to fence\nset-up/);
    const twice = await told('6, 10, 10, 12, 12');
    expect(twice).toMatch(/2 of 12, 2 of 10\nin all/);
    expect(twice).toMatch(/12 \+ 10 = 22, at each fence\nset-up/);
    expect(await told('6, 16, 10, 12')).toMatch(
      /16 \+ 6 = 22 at the left fence, 12 \+ 10 = 22 at the right one\nset-up/,
    );
  });

  test('names packers and blocks that are made', async () => {
    const text = withShop(exampleText('periodicals.joinery'), BEAMED);
    expect(all(await coverOf(text, 1))).toMatch(
      /Packers\na block 17\.7 thick, beside a piece that lies alone\nset-ups/,
    );
    const cut = exampleText('periodicals.joinery').replace(
      '350 above base.bottom',
      '350 above base.bottom  spacer cut',
    );
    expect(all(await coverOf(cut, 1))).toMatch(/To be made\na block of 22\nset-up/);
  });
});
