import { planWork } from '@dryfit/engine';
import { cabinetId, PAPERS, type Page, type Paper, sheetPages, sheetsHtml } from '@dryfit/output';
import fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { plans } from '../support/cabinets/arbitrary.js';
import { divided } from '../support/cabinets/divided.js';
import { write } from '../support/cabinets/plan.js';
import { exampleText } from '../support/examples.js';
import { examineText } from '../support/read.js';
import { faults, wordsOn } from './faults.js';

async function pagesOf(text: string, paper: Paper, units: 'mm' | 'in', count = 3): Promise<readonly Page[]> {
  const { results } = await examineText(text);
  const items = [...new Map(results.map((result) => [cabinetId(result), { result, count }])).values()];
  return sheetPages({ title: ['job Test'], items, plan: await planWork(items), errors: 0 }, paper, { units });
}

const EXAMPLES = ['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth'];

describe.each(EXAMPLES)('the sheets of %s', (name) => {
  test.each(['A4', 'Letter'] as const)('fit on %s, and no words stand on others', async (paper) => {
    for (const units of ['mm', 'in'] as const) {
      const pages = await pagesOf(exampleText(`${name}.joinery`), paper, units);
      expect(pages.length).toBeGreaterThan(1);
      for (const page of pages) {
        expect([page.width, page.height]).toEqual(PAPERS[paper]);
        expect([page.title, faults(page)]).toEqual([page.title, []]);
        // 7 points.
        const small = wordsOn(page).filter(({ size }) => size < (7 * 25.4) / 72);
        expect([page.title, small.map(({ text }) => text)]).toEqual([page.title, []]);
      }
    }
  });
});

test('of any cabinets fit on their paper', async () => {
  await fc.assert(
    fc.asyncProperty(plans, fc.integer({ min: 1, max: 30 }), async (plan, count) => {
      for (const page of await pagesOf(write(plan, {}), 'A4', 'mm', count))
        expect([page.title, faults(page)]).toEqual([page.title, []]);
    }),
    { numRuns: 30 },
  );
});

describe('what a sheet says in words', () => {
  const said = async () =>
    (await pagesOf(exampleText('periodicals.joinery'), 'A4', 'mm'))
      .filter(({ title }) => !title.includes('how the parts are marked'))
      .map((page) => wordsOn(page).map(({ text }) => text));

  test('fence, datum, face, stop, spacer, depth, lines, count, what comes next', async () => {
    const [, ...setUps] = await said();
    for (const words of setUps) {
      const all = words.join('\n');
      for (const wanted of [
        /(LEFT|RIGHT) FENCE: rear edge/,
        /toward you/,
        /^CLAMP the piece.*\. (SLIDE|LIFT) the machine/m,
        /^(Press|Mark out) /m,
        /\bStep \d of \d\./,
        /(face|end) (up|down)/,
        /^STOP$/m,
        /^SPACER$/m,
        /^DEPTH$/m,
        /^12\.3$/m,
        /\d+ × /,
        /^Then/m,
        /Isolate the machine/,
      ])
        expect(all).toMatch(wanted);
    }
    const all = setUps.flat().join('\n');
    // What is measured stands once in each set-up, before its pieces.
    expect(all.match(/^FIRST PIECE /gm)).toHaveLength(4);
    expect(all).toMatch(/12 \+ 10 = 22/);
    expect(all).toMatch(/^350$/m);
    expect(all.replace(/\n/g, ' ')).toMatch(/base 350 from the bottom end, middle of the slots 359.5/);
  });

  test('what is said of a setting is said to its end, in inches too', async () => {
    const pages = await pagesOf(exampleText('periodicals.joinery'), 'A4', 'in');
    const all = pages.flatMap((page) => wordsOn(page).map(({ text }) => text)).join(' ');
    // 350 mm and 9.5 mm more are 359.5 mm, 14.1535 in.
    expect(all).toMatch(/from the bottom end, middle of the slots 14 5\/32 /);
  });

  // By hand: 300 and 400 less an offcut of 17.7.
  test('a block at the stop is told on its card, in the box of the stop, and before it is laid there', async () => {
    const pages = await pagesOf(divided([300, 400]), 'A4', 'mm');
    const words = pages.map((page) => wordsOn(page).map(({ text }) => text));
    for (const [stop, base] of [
      [300, 282.3],
      [400, 382.3],
    ]) {
      const [own, ...others] = words.filter((texts) => texts.includes(`base ${base} from block`));
      expect(others).toEqual([]);
      expect(own).toContain('bottom end up, at the block');
      // The side is milled at the same stop without it.
      expect(own).toContain(`base ${stop} from stop`);
      expect(own?.join(' ')).toContain('less where a block lies at the stop');
      expect(own?.some((text) => text.startsWith('BLOCK 17.7 (offcut of birch18)'))).toBe(true);
      expect(own?.join(' ')).not.toContain('otherwise than the joint asks');
    }
    const next = words.map((texts) => texts.join(' ').replaceAll('\n', ' '));
    expect(next.filter((text) => /Then set-up \d+: .*block 17\.7 at the stop; all else stays/.test(text))).toHaveLength(
      2,
    );
  });

  // The shop has one stack of 18: the divider's two faces go to different fences, 300 and 400 up.
  test('a spacer that stays as it is and goes to the other fence is told before its set-up', async () => {
    const back = divided([300, 400])
      .replace('connect biscuit20', 'depth 382 of divider, lshelf, rshelf\n  connect biscuit20')
      .replace('right of lh.right  flush rear, front', 'right of lh.right  flush front')
      .replaceAll('above base.bottom  flush rear, front', 'above base.bottom  flush front');
    const pages = await pagesOf(back, 'A4', 'mm');
    const next = pages.map((page) =>
      wordsOn(page)
        .map(({ text }) => text)
        .join(' '),
    );
    const moved = next.filter((text) =>
      /Then set-up \d+: stop to (300|400), spacer to the (left|right) fence, block/.test(text),
    );
    expect(moved).toHaveLength(1);
  });

  test('a mitred end goes against its fence with its toe', async () => {
    const pages = await pagesOf(exampleText('display-plinth.joinery'), 'A4', 'mm');
    const all = pages.flatMap((page) => wordsOn(page).map(({ text }) => text)).join(' ');
    expect(all).toContain('RIGHT FENCE: toe of the left end');
    expect(all).toContain('Press toe of the left end to the fence');
    expect(all).toContain('Toe: the sharp corner of');
  });

  test('a left side and a right side never share a card', async () => {
    const pages = await said();
    // Cards open with their fence; the pieces below it are of one hand.
    for (const words of pages) expect(words.some((text) => /× .*\blh\b.*\brh\b/.test(text))).toBe(false);
  });
});

test('the document is sound, its pages are as large as the paper, and nothing is fetched', async () => {
  const pages = await pagesOf(exampleText('bookcase.joinery'), 'Letter', 'in');
  const html = sheetsHtml('Sheets <of> "a" job & more', pages);
  expect(html.match(/<svg /g)).toHaveLength(pages.length);
  expect(html).toContain('@page{size:215.9mm 279.4mm;margin:0}');
  expect(html).not.toMatch(/<script|<link|<img|url\(|https?:(?!\/\/www\.w3\.org\/2000\/svg)/);
  expect(html).toContain('<title>Sheets &#60;of&#62; &#34;a&#34; job &#38; more</title>');
  for (const svg of html.match(/<svg[\s\S]*?<\/svg>/g) ?? []) new SaxesParser().write(svg).close();
});
