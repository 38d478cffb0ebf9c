import type { PlanJson } from '@dryfit/output';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { disagreements, type Operation } from '../support/bench.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { divided } from '../support/cabinets/divided.js';
import { write } from '../support/cabinets/plan.js';
import { rack } from '../support/cabinets/rack.js';
import { exampleText } from '../support/examples.js';
import { withShop } from '../support/own-shop.js';
import { planned } from '../support/planned.js';
import { examineText } from '../support/read.js';

test.each(['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth'])('%s', async (name) => {
  const { results } = await examineText(exampleText(`${name}.joinery`));
  const { fit, plan } = await planned(results, 1, 2, 3);
  expect(plan.setUps.length).toBeGreaterThan(0);
  expect(disagreements(fit, plan)).toEqual([]);
});

test.each(['down', 'up'])('with edges held the other way: reference %s', async (way) => {
  const pose = `pose { edge slots reference ${way}  face slots reference ${way} }`;
  const text = withShop(exampleText('periodicals.joinery'), pose);
  const { results } = await examineText(text);
  const { fit, plan } = await planned(results, 1);
  expect(disagreements(fit, plan)).toEqual([]);
});

/** A text whose jig has a left fence only, in a shop that may hold pieces either way up. */
const oneFence = (text: string): string =>
  text
    .replace(/fences left, right/g, 'fences left')
    .replace(/reference down/g, 'reference down or up')
    .replace(/reference up/g, 'reference up or down');

test('a jig with one fence takes everything, where pieces may be held either way up', async () => {
  let turned = 0;
  const counts = fc.integer({ min: 1, max: 5 });
  await fc.assert(
    fc.asyncProperty(plans, counts, async (plan, count) => {
      const { results } = await examineText(oneFence(write(plan, {})));
      const made = await planned(results, count);
      expect(disagreements(made.fit, made.plan)).toEqual([]);
      const jig = results[0]?.spec.shop.jig;
      for (const { operations, spacer: block } of made.plan.setUps)
        for (const { fence, otherwise, held: holding } of operations) {
          if (jig === undefined || block.kind === 'mark out' || holding.along.to === 'marks') continue;
          expect(fence).toBe('left');
          if (otherwise) turned++;
        }
    }),
    fixedFirst({ fixed: 20, numRuns: 40 }, plans, counts),
  );
  expect(turned).toBeGreaterThan(20);
});

/** Both shelves on the same lines. */
const shelves = (deep: number, by: string, more: string): string => rack(deep, [by, by], more);
const OWN = 'jig own { bed 900  fences left  stop 0 to 760 step 0.5  spacers 6, 10 within 0.2 }';
const EITHER = 'pose { edge slots reference down or up  face slots reference up or down }';
const TRUE = 'tolerances { saw ± 0.05  dirt 0.02 }';
const STRIP = 'pattern strip { lines 80, 160, 240, 400, 480, 560, 720 }';

// Worked by hand: lines 80, 160, 240 of a piece of 320 lie on 400, 480, 560 for the next, as those of a piece of 314 do with
// a spacer of 6 between; one of 300 finds no such lines on the strip. Two widths of 0.05 and dirt of 0.02 add 0.07.
test.each([
  [
    'three of 300 on a bed of 900, lines laid off anew',
    shelves(300, 'by lines 80, 160, 240', `${OWN} ${EITHER} ${TRUE}`),
    { pieces: 3, marked: 6 },
  ],
  ['four of 200', shelves(200, 'by lines 60, 140', `${OWN} ${EITHER} ${TRUE}`), { pieces: 4, marked: 6 }],
  ['on the strip', shelves(320, 'by strip', `${STRIP} ${OWN} ${EITHER} ${TRUE}`), { pieces: 2, marked: 0 }],
  [
    'with a spacer',
    shelves(314, 'by strip', `${STRIP} ${OWN} ${EITHER} ${TRUE}`),
    { pieces: 2, marked: 0, between: 6 },
  ],
  ['off the strip', shelves(300, 'by strip', `${STRIP} ${OWN} ${EITHER} ${TRUE}`), undefined],
  ['too wide', shelves(460, 'by lines 80, 160, 240', `${OWN} ${EITHER} ${TRUE}`), undefined],
  ['a saw too coarse', shelves(320, 'by strip', `${STRIP} ${OWN} ${EITHER} tolerances { saw ± 0.2 }`), undefined],
])('pieces in a row: %s', async (_, text, wanted) => {
  const { results } = await examineText(text);
  const { fit, plan } = await planned(results, 5);
  expect(disagreements(fit, plan)).toEqual([]);
  const rows = plan.setUps.flatMap(({ alike }) => alike);
  expect(rows.length > 0).toBe(wanted !== undefined);
  const [row] = rows;
  if (!wanted || !row) return;
  expect({
    pieces: row.pieces,
    marked: row.marked.length,
    ...(row.between.length > 0 ? { between: row.between[0]?.mm } : {}),
  }).toEqual(wanted);
  const before = row.pieces - 1;
  expect(row.adds?.worstCase.mm).toBeCloseTo(before * 0.07, 9);
  expect(row.adds?.rootSumSquare.mm).toBeCloseTo(Math.sqrt(before * (0.05 ** 2 + 0.02 ** 2)), 3);
});

test('pieces of cabinets that differ lie in one row where they are milled alike', async () => {
  const one = shelves(200, 'by lines 60, 140', `${OWN} ${EITHER} ${TRUE}`);
  const cabinet = one.slice(one.indexOf('cabinet Rack'));
  const wide = cabinet.replace('cabinet Rack', 'cabinet Wide').replace('width 600', 'width 640');
  const deep = cabinet.replace('cabinet Rack', 'cabinet Deep').replace('depth 200', 'depth 210');
  const { results } = await examineText(`${one}\n${wide}\n${deep}`);
  const { fit, plan } = await planned(results, 1);
  expect(disagreements(fit, plan)).toEqual([]);
  const cabinetsOf = (
    setUp: PlanJson['setUps'][number],
    shares: PlanJson['setUps'][number]['alike'][number]['shares'],
  ) => shares.map(({ operation, pieces }) => `${pieces} ${setUp.operations[operation]?.pieces[0]?.cabinet}`).join(', ');
  const rows = plan.setUps.flatMap((setUp) => setUp.alike.map(({ shares }) => cabinetsOf(setUp, shares)));
  // Two shelves each: four of one depth in a row, and those that are deeper by themselves.
  expect(rows).toContain('2 Rack, 2 Wide');
  expect(rows.filter((row) => row.includes('Deep') && row.includes(','))).toEqual([]);
  // No piece lies twice in a row.
  for (const { alike, operations } of plan.setUps)
    for (const { shares } of alike) {
      const pieces = shares.flatMap(({ operation }) =>
        (operations[operation]?.pieces ?? []).flatMap(({ cabinet: id, parts }) => parts.map((part) => `${id} ${part}`)),
      );
      expect(new Set(pieces).size).toBe(pieces.length);
    }
});

test('any cabinets', async () => {
  let slots = 0;
  const counts = fc.integer({ min: 1, max: 3 });
  await fc.assert(
    fc.asyncProperty(plans, fc.boolean(), counts, async (plan, mirrored, count) => {
      const { results } = await examineText(write(plan, { mirrored }));
      const made = await planned(results, count);
      slots += made.plan.setUps.reduce((sum, setUp) => sum + setUp.slots, 0);
      expect(disagreements(made.fit, made.plan)).toEqual([]);
    }),
    fixedFirst({ fixed: 20, numRuns: 60 }, plans, fc.boolean(), counts),
  );
  expect(slots).toBeGreaterThan(100);
});

test('a fence on the wrong side shows', async () => {
  const { results } = await examineText(exampleText('periodicals.joinery'));
  const { fit, plan } = await planned(results, 1);
  const wrong: PlanJson = {
    ...plan,
    setUps: plan.setUps.map((setUp) => ({
      ...setUp,
      operations: setUp.operations.map((one) => ({ ...one, fence: one.fence === 'left' ? 'right' : 'left' })),
    })),
  };
  expect(disagreements(fit, wrong)).not.toEqual([]);
});

test.each([
  ['lacks its last line', (own: Operation['lines']) => own.slice(0, -1)],
  ['has no lines', () => []],
  ['has the lines of the first piece', (_own: Operation['lines'], first: Operation['lines']) => first],
])('where the last piece of a row %s, it shows', async (_, spoil) => {
  const { results } = await examineText(shelves(200, 'by lines 60, 140', `${OWN} ${EITHER} ${TRUE}`));
  const { fit, plan } = await planned(results, 5);
  expect(disagreements(fit, plan)).toEqual([]);
  let spoiled = 0;
  const wrong: PlanJson = {
    ...plan,
    setUps: plan.setUps.map((setUp) => ({
      ...setUp,
      alike: setUp.alike.map((row) => {
        spoiled++;
        return { ...row, lines: [...row.lines.slice(0, -1), spoil(row.lines.at(-1) ?? [], row.lines[0] ?? [])] };
      }),
    })),
  };
  expect(spoiled).toBeGreaterThan(0);
  expect(disagreements(fit, wrong)).toContainEqual(expect.stringContaining('4. piece of a row lie elsewhere'));
});

/** Blocks at the stop, by what is milled against them: "divider left 17.7 at 300". */
const blocksOf = (plan: PlanJson): string[] =>
  plan.setUps.flatMap(({ stop, operations }) =>
    operations.flatMap(({ pieces, surface, stop: own }) =>
      own?.block ? [`${pieces[0]?.parts} ${surface} ${own.block.mm} at ${stop?.mm}`] : [],
    ),
  );

// Worked by hand: the base is 17.7 thick, and the divider stands on it. Its own stops would be 282.3 and 382.3, where a stop
// with a place every 0.5 has none; with an offcut of the base at the stop they are 300 and 400, as for the sides.
test('a divider on the base is held off the stop by an offcut of it, at the stop of the sides', async () => {
  const { results } = await examineText(divided([300, 400]));
  const { fit, plan } = await planned(results, 3);
  expect(disagreements(fit, plan)).toEqual([]);
  expect(blocksOf(plan).sort()).toEqual(['divider left 17.7 at 300', 'divider right 17.7 at 400']);
  expect(plan.setUps.flatMap(({ stop }) => stop?.mm ?? []).sort()).toEqual([300, 400, 450]);
  const without: PlanJson = {
    ...plan,
    setUps: plan.setUps.map((setUp) => ({
      ...setUp,
      operations: setUp.operations.map(({ stop, ...one }) => ({
        ...one,
        ...(stop ? { stop: { end: stop.end, distance: stop.distance } } : {}),
      })),
    })),
  };
  expect(disagreements(fit, without)).toHaveLength(6);
});

test('a divider whose own stop can be set goes without a block, unless the block spares a set-up', async () => {
  const { results } = await examineText(divided([300, 300], 'jig fine { bed 900  fences left, right  stop 0 to 760 }'));
  const { fit, plan } = await planned(results, 1);
  expect(disagreements(fit, plan)).toEqual([]);
  expect(blocksOf(plan).sort()).toEqual(['divider left 17.7 at 300', 'divider right 17.7 at 300']);
  expect(plan.setUps.filter(({ stop }) => stop?.mm === 300)).toHaveLength(1);
});

test('no block where no stop stands at the other end either', async () => {
  const { results } = await examineText(
    divided([300, 300], 'jig short { bed 900  fences left, right  stop 0 to 290 }'),
  );
  const { fit, plan } = await planned(results, 1);
  expect(disagreements(fit, plan)).toEqual([]);
  expect(blocksOf(plan)).toEqual([]);
});

test('shelves at any heights beside a divider', async () => {
  let blocks = 0;
  const heights = fc.integer({ min: 60, max: 600 });
  await fc.assert(
    fc.asyncProperty(heights, heights, fc.integer({ min: 1, max: 3 }), async (left, right, count) => {
      const { results } = await examineText(divided([left, right]));
      const made = await planned(results, count);
      blocks += blocksOf(made.plan).length;
      expect(disagreements(made.fit, made.plan)).toEqual([]);
    }),
    fixedFirst({ fixed: 10, numRuns: 30 }, heights, heights, fc.integer({ min: 1, max: 3 })),
  );
  expect(blocks).toBeGreaterThan(10);
});
