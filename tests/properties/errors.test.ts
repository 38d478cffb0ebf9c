import { type Bounded, figuresOf, Rational, reckon, resultsOf } from '@dryfit/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { fitText } from '../support/read.js';

const TOLERANCES = `
tolerances {
  saw plus 0.2mm minus 0.1mm
  square 1mm over 1000mm
  mitre ± 0.2 degrees
  cuts ± 0.1mm
  fence ± 0.1mm
  spacer ± 0.05mm
  stop ± 0.1mm
  line ± 0.2mm
  cup 0.3mm
  dirt 0.1mm
}
`;

const number = (length: Rational | Bounded): number => (length instanceof Rational ? length.toNumber() : length.value);

/** Every result of a cabinet with its figures, rounded far below what anybody could measure. */
async function toldOf(text: string) {
  const results = resultsOf(reckon((await fitText(text + TOLERANCES)).spec));
  return results
    .map(({ id, adds, limit }) => {
      const { worst, rootSumSquare, contributions } = figuresOf(adds);
      const near = (length: Rational | Bounded) => number(length).toFixed(6).replace('-0.000000', '0.000000');
      return {
        id,
        limit: limit?.toString(),
        curve: 'curve' in adds,
        least: number(worst.least),
        most: number(worst.most),
        middle: number(rootSumSquare.middle),
        half: rootSumSquare.half.value,
        figures: [worst.least, worst.most, rootSumSquare.middle, rootSumSquare.half].map(near).join(' '),
        from: contributions.map(({ of, share }) => `${of.id} ${share.toFixed(6)}`).sort(),
      };
    })
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

test('everything off at once reaches further than root sum square, and both straddle what is planned', async () => {
  let results = 0;
  await fc.assert(
    fc.asyncProperty(plans, async (plan) => {
      for (const { curve, least, most, middle, half } of await toldOf(write(plan))) {
        if (curve) continue;
        expect(least).toBeLessThanOrEqual(middle - half + 1e-9);
        expect(most).toBeGreaterThanOrEqual(middle + half - 1e-9);
        results++;
      }
    }),
    fixedFirst({ fixed: 25, numRuns: 40 }, plans),
  );
  expect(results).toBeGreaterThan(300);
});

test('the order of statements, and of facts in their braces, changes no error and nothing it comes from', async () => {
  await fc.assert(
    fc.asyncProperty(plans, fc.integer({ min: 1, max: 1_000_000 }), async (plan, order) => {
      const told = await toldOf(write(plan));
      const other = await toldOf(write(plan, { order }));
      const same = (all: typeof told) => all.map(({ id, limit, figures, from }) => ({ id, limit, figures, from }));
      expect(same(other)).toEqual(same(told));
    }),
    { numRuns: 40 },
  );
});
