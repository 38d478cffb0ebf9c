import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Choice, cheapestCover } from './cover.js';

const instances = fc.integer({ min: 1, max: 8 }).chain((count) =>
  fc.record({
    count: fc.constant(count),
    choices: fc.array(
      fc.record({
        cost: fc.integer({ min: 1, max: 9 }),
        serves: fc.uniqueArray(fc.integer({ min: 0, max: count - 1 }), { minLength: 1 }),
      }),
      { minLength: 1, maxLength: 9 },
    ),
  }),
);

/** The least cost over every subset of the choices. */
function byTrying(count: number, choices: readonly Choice[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 1 << choices.length; set++) {
    const chosen = choices.filter((_, i) => (set & (1 << i)) !== 0);
    if (new Set(chosen.flatMap(({ serves }) => serves)).size < count) continue;
    least = Math.min(
      least,
      chosen.reduce((sum, { cost }) => sum + cost, 0),
    );
  }
  return least;
}

describe('the cheapest cover', () => {
  test('is what trying every subset finds', async () => {
    await fc.assert(
      fc.asyncProperty(instances, async ({ count, choices }) => {
        const { chosen, cost, lowerBound, proven } = await cheapestCover(count, choices);
        const least = byTrying(count, choices);
        expect([cost, lowerBound, proven]).toEqual([least, least, true]);
        const served = new Set(chosen.flatMap((i) => choices[i]?.serves ?? []));
        expect(served.size).toBe(Number.isFinite(least) ? count : 0);
      }),
      { numRuns: 150 },
    );
  });

  test('of nothing is nothing', async () => {
    expect(await cheapestCover(0, [])).toEqual({ chosen: [], cost: 0, lowerBound: 0, proven: true });
  });

  test('refuses what cannot be meant', async () => {
    await expect(cheapestCover(2, [{ cost: 0, serves: [0, 1] }])).rejects.toThrow(/costs are above 0/);
    await expect(cheapestCover(2, [{ cost: 1, serves: [2] }])).rejects.toThrow(/only 0 to 1/);
  });
});
