import { type FittedJoint, type Half, type Plan, planWork, remade, type Setting } from '@dryfit/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { divided } from '../support/cabinets/divided.js';
import { write } from '../support/cabinets/plan.js';
import { exampleText } from '../support/examples.js';
import { examineText } from '../support/read.js';

/** What is milled into a part in a plan: place by place, and with which setting. */
function milled(plan: Plan, item: number, part: string): string[] {
  const told = ({ depth, base, spacer, stop, lines, machine, connector }: Setting) =>
    JSON.stringify([depth, base, spacer, stop, lines, machine, connector]);
  return plan.setUps
    .flatMap(({ setting, operations }) =>
      operations
        .filter(({ pieces }) => pieces.some((one) => one.item === item && one.parts.includes(part)))
        .map(({ half }) => {
          const slots = half.slots.map(({ fromDatum }) => String(fromDatum)).join(' ');
          return `${half.surface} ${half.across} ${half.datum} ${half.hand} ${slots}: ${told(setting)}`;
        }),
    )
    .sort();
}

async function compared(text: string, mostParts: number): Promise<number> {
  const { results } = await examineText(text);
  const items = results.map((result, i) => ({ result, count: i + 2 }));
  const plan = await planWork(items);
  let pieces = 0;
  for (const [index, { result }] of items.entries())
    for (const part of result.fit.parts.slice(0, mostParts)) {
      const alone = remade(plan, items, index, part.id);
      if (!alone) throw new Error(`${part.id} is not in the job`);
      const again = await planWork([alone]);
      expect(milled(again, 0, part.id)).toEqual(milled(plan, index, part.id));
      const wanted = result.fit.joints.flatMap(({ halves }: FittedJoint) =>
        halves.filter((half: Half) => half.part === part.id && half.slots.length > 0),
      );
      const operations = again.setUps.flatMap((setUp) => setUp.operations);
      // No other part, each half once, one piece, and never beside itself.
      expect(operations.reduce((sum, { half }) => sum + half.slots.length, 0)).toBe(
        wanted.reduce((sum, { slots }) => sum + slots.length, 0),
      );
      for (const { pieces: own } of operations) expect(own).toEqual([{ item: 0, parts: [part.id], count: 1 }]);
      for (const { beside } of again.setUps) expect(beside).toEqual([]);
      if (wanted.length > 0) pieces++;
    }
  return pieces;
}

test.each(['periodicals', 'rail-base', 'display-plinth'])(
  'a piece of %s made again is milled as its job mills it',
  async (name) => {
    expect(await compared(exampleText(`${name}.joinery`), 100)).toBeGreaterThan(3);
  },
);

test('a divider made again has its block at the stop once more', async () => {
  expect(await compared(divided([300, 400]), 100)).toBe(7);
});

// By itself the shelf would be milled on the lines its joint names; its job has those of the pattern that is set anyway.
test('a piece is milled on the lines that its job took for it, not on those it would have alone', async () => {
  const text = exampleText('periodicals.joinery')
    .replace('cabinet Periodicals', 'pattern short3 { lines 70, 180, 270 }\n\ncabinet Periodicals')
    .replace('bottom 350 above base.bottom', 'connect biscuit20 by short3\n    bottom 350 above base.bottom');
  const { results } = await examineText(text);
  const items = results.map((result) => ({ result, count: 1 }));
  const plan = await planWork(items);
  const patterns = ({ setUps }: Plan) => [...new Set(setUps.map(({ setting }) => setting.pattern))];
  const [item] = items;
  if (!item) throw new Error('there is no cabinet');
  expect(patterns(plan)).toEqual(['deep5']);
  expect(patterns(await planWork([{ ...item, only: new Set(['shelf']) }]))).toEqual(['short3']);
  const alone = remade(plan, items, 0, 'shelf');
  expect(alone && patterns(await planWork([alone]))).toEqual(['deep5']);
});

test('a piece of any cabinet made again is milled as its job mills it', async () => {
  let pieces = 0;
  await fc.assert(
    fc.asyncProperty(plans, fc.boolean(), async (plan, mirrored) => {
      pieces += await compared(write(plan, { mirrored }), 4);
    }),
    fixedFirst({ fixed: 12, numRuns: 25 }, plans, fc.boolean()),
  );
  expect(pieces).toBeGreaterThan(20);
});
