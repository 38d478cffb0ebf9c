import { contributorsIn, type FitResult, planWork, type Side } from '@dryfit/engine';
import { cabinetId, fitJson, type Page, planJson, sheetPages } from '@dryfit/output';
import { expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { withShop } from '../support/own-shop.js';
import { examineText } from '../support/read.js';
import { wordsOn } from './faults.js';

const PERIODICALS = exampleText('periodicals.joinery');

async function made(text: string, units: 'mm' | 'in' = 'mm') {
  const { results } = await examineText(text);
  const once: readonly FitResult[] = [...new Map(results.map((one) => [cabinetId(one), one])).values()];
  const items = once.map((result) => ({ result, count: 3 }));
  const job = { title: ['job Test'], items, plan: await planWork(items), errors: 0 };
  const fit = fitJson('job', { title: job.title, items, errors: 0 }, [], () => undefined, { units });
  return { results: once, fit, plan: planJson(job), words: wordsOf(sheetPages(job, 'A4', { units })) };
}

/** What stands on the pages, line breaks within a sentence taken out. */
const wordsOf = (pages: readonly Page[]): string =>
  pages
    .flatMap(wordsOn)
    .map(({ text }) => text)
    .join(' ');

// Base and top of the plinth have slots in their faces alone, from an end or along the cant: no cup moves those.
test.each(['periodicals', 'corner-plinth'])(
  'pieces of %s are clamped flat of which the errors reckon with a cup',
  async (name) => {
    const { results, plan, words } = await made(withShop(exampleText(`${name}.joinery`), 'tolerances { cup 0.3 }'));
    const bowed = new Set(
      results.flatMap((result) =>
        result.fit.joints.flatMap(({ id }) =>
          result
            .errors(id)
            .flatMap(({ adds }) =>
              contributorsIn(adds).flatMap(({ origin, id: of }) => (origin === 'cup' ? [of.replace(/^cup /, '')] : [])),
            ),
        ),
      ),
    );
    expect(bowed.size).toBeGreaterThan(2);
    const operations = plan.setUps.flatMap((setUp) => setUp.operations);
    const flat = operations.filter(({ held }) => held.flat !== undefined);
    expect(new Set(flat.flatMap(({ pieces }) => pieces.flatMap(({ parts }) => parts)))).toEqual(bowed);
    expect(new Set(flat.map(({ held }) => held.flat?.cup?.mm))).toEqual(new Set([0.3]));
    expect(words).toContain('CLAMP the piece FLAT (cup up to 0.3)');
  },
);

test('where the shop says that nothing cups, nothing is pressed flat', async () => {
  const { plan, words } = await made(withShop(PERIODICALS, 'tolerances { cup 0 }'));
  expect(plan.setUps.flatMap(({ operations }) => operations.filter(({ held }) => held.flat))).toEqual([]);
  expect(words).not.toMatch(/FLAT/);
});

// Worked by hand: the largest pieces are the sides, 720 x 560 x 17.7, of 4.9, 17.8 and 30.0 kg. At 4200 kg a cubic metre top
// and base, 564.6 x 560, come to 23.5 kg, the shelf, 564.6 x 538, to 22.6 kg.
test.each([
  [680, []],
  [2500, []],
  [4200, ['base', 'lh', 'rh', 'top']],
] as const)('at %i kg a cubic metre, two lift what weighs more than 23 kg', async (density, byTwo) => {
  const heavy = `material heavy { thickness 18  measured 17.7 ± 0.2  density ${density} kg/m3 }`;
  const { fit, plan, words } = await made(withShop(PERIODICALS, heavy).replaceAll('of birch18', 'of heavy'));
  const weights = new Map(
    fit.cabinets.flatMap(({ id, parts }) =>
      parts.map((part): [string, number] => {
        const at = (side: Side): number => part.planes?.[side].mm ?? Number.NaN;
        const volume = (at('right') - at('left')) * (at('rear') - at('front')) * (at('top') - at('bottom'));
        return [`${id} ${part.id}`, (volume / 1e9) * density];
      }),
    ),
  );
  const heavier = new Set<string>();
  for (const { pieces, held, weight } of plan.setUps.flatMap(({ operations }) => operations))
    for (const { cabinet, parts } of pieces)
      for (const part of parts) {
        const own = weights.get(`${cabinet} ${part}`) ?? Number.NaN;
        expect(weight).toBeCloseTo(own, 9);
        expect(held.people).toBe(own > 23 ? 2 : 1);
        if (own > 23) heavier.add(part);
      }
  expect([...heavier].sort()).toEqual(byTwo);
  expect(words.includes('lift it with two')).toBe(byTwo.length > 0);
});

test('in inches pounds are told: a pound is 0.45359237 kg', async () => {
  const { plan, words } = await made(PERIODICALS, 'in');
  const [operation] = plan.setUps[0]?.operations ?? [];
  expect(words).toContain(`${Number(((operation?.weight ?? 0) / 0.45359237).toFixed(1))} lb each`);
  expect(words).not.toMatch(/\d kg/);
});

test('out of reach of the stop a straight edge is clamped on', async () => {
  const jig = 'jig short { bed 900  fences left, right  stop 0 to 300 step 0.5  spacers 6, 10, 12, 19, 25 within 0.2 }';
  const { plan, words } = await made(withShop(PERIODICALS, jig));
  const stopped = plan.setUps.flatMap(({ stop, operations }) => (stop ? operations : []));
  expect(stopped.length).toBeGreaterThan(0);
  for (const { held, stop } of stopped) expect(held.across.to).toBe((stop?.distance.mm ?? 0) > 300 ? 'marks' : 'stop');
  expect(words).toContain('straight edge for the machine’s base 350 from the bottom end');
});

test('without a jig, fences are marks and the bench is the bed', async () => {
  const text = PERIODICALS.replace('import "shop.joinery"', 'import "bench.joinery"')
    .replaceAll('birch18', 'birch15')
    .replaceAll('ply6', 'ply9')
    .replace('biscuit20 by deep5', 'dowel6x30 by ends')
    .replace('width 6', 'width 9')
    .replace('depth 8', 'depth 6');
  const { plan, words } = await made(text);
  const held = plan.setUps.flatMap(({ operations }) => operations.map((one) => one.held));
  expect(held.length).toBeGreaterThan(0);
  expect(new Set(held.map(({ along }) => along.to))).toEqual(new Set(['marks']));
  expect(new Set(held.map(({ across }) => across.to))).toEqual(new Set(['bench', 'machine', 'marks']));
  expect(words).toContain('Mark out from the rear edge; press bottom face to the bench.');
  expect(words).toContain('MARK OUT FROM: rear edge, at your left');
  expect(words).not.toMatch(/FENCE|(left|right|other|the piece itself goes against the) fence/);
});

test('what a sheet tells of a piece’s way: step, where from, which turn, other fence, where next', async () => {
  const { words } = await made(PERIODICALS);
  expect(words).toContain('Step 1 of 2. Later: right end, this set-up.');
  expect(words).toMatch(/Step 2 of 2\. After left end, this set-up: turned end for end, other fence\./);
  expect(words).toMatch(/Later: right face, 350 from its bottom end, set-up 4\./);
});
