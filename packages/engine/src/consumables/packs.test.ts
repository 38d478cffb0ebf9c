import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Rational } from '../number/rational.js';
import { packsFor } from './packs.js';

const pack = (size: Rational) => ({ size, text: String(size) });
const buy = (need: Rational, sizes: readonly Rational[]) => {
  const found = packsFor(need, sizes.map(pack));
  return {
    ...found,
    told: found?.packs.map(({ pack: { text }, count }) => `${count} of ${text}`).join(', '),
    number: found?.packs.reduce((sum, { count }) => sum + count, 0) ?? 0,
  };
};
const whole = (...sizes: readonly number[]) => sizes.map((size) => Rational.of(size));

/** Every way to take packs, as long as another is wanted at all: what they hold and how many they are. */
function everyWay(need: Rational, sizes: readonly Rational[]): { holds: Rational; number: number }[] {
  const [size, ...others] = sizes;
  if (!size) return need.sign() <= 0 ? [{ holds: Rational.ZERO, number: 0 }] : [];
  const most = Math.max(0, need.div(size).ceil().toNumber());
  return Array.from({ length: most + 1 }, (_, taken) => taken).flatMap((taken) => {
    const held = size.mul(Rational.of(taken));
    return everyWay(need.sub(held), others).map((way) => ({
      holds: way.holds.add(held),
      number: way.number + taken,
    }));
  });
}

describe('the packs that are bought', () => {
  test.each([
    [945, [100, 1000], '1 of 1000'],
    [850, [100, 1000], '9 of 100'],
    [1030, [100, 1000], '1 of 1000, 1 of 100'],
    [11, [10, 3], '4 of 3'],
    [1_000_000_007, [100, 1000], '1000000 of 1000, 1 of 100'],
    [0, [100], ''],
    [1, [100, 25], '1 of 25'],
  ])('for %i out of packs of %j: %s', (need, sizes, told) => {
    const found = buy(Rational.of(need), whole(...sizes));
    expect(found.told).toBe(told);
    expect(found.proven).toBe(true);
  });

  test('are none where the shop does not say how they are sold', () => {
    expect(packsFor(Rational.of(5), [])).toBeUndefined();
  });

  test('leave least over, and are the fewest that do, as every way of taking them shows', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 120 }), sizes, fc.constantFrom(1, 2, 3, 7), (need, list, parts) => {
        const exact = list.map((size) => Rational.of(size, parts));
        const found = buy(Rational.of(need, 2), exact);
        const ways = everyWay(Rational.of(need, 2), exact);
        const least = ways.reduce((a, b) => (b.holds.lt(a.holds) ? b : a)).holds;
        const fewest = Math.min(...ways.filter(({ holds }) => holds.equals(least)).map(({ number }) => number));
        expect([String(found.holds), found.number, found.proven]).toEqual([String(least), fewest, true]);
        expect(String(found.over)).toBe(String(least.sub(Rational.of(need, 2))));
      }),
      { numRuns: 300 },
    );
  });

  test('are found by their remainders as well where the need is large', () => {
    // Beyond M − 1 packs of the others the largest are sure; sums by plain dynamic programming are the oracle.
    const sizes = [97, 60, 11];
    for (const need of [5000, 12_345, 20_011]) {
      const fewest = new Array<number>(need + 97).fill(Number.POSITIVE_INFINITY);
      fewest[0] = 0;
      for (let sum = 1; sum < fewest.length; sum++)
        for (const size of sizes)
          if (sum >= size) fewest[sum] = Math.min(fewest[sum] as number, (fewest[sum - size] as number) + 1);
      const least = fewest.findIndex((number, sum) => sum >= need && Number.isFinite(number));
      const found = buy(Rational.of(need), whole(...sizes));
      expect([found.holds?.toNumber(), found.number]).toEqual([least, fewest[least]]);
    }
  });

  test('cover the need, and say so, where there are too many ways to look at', () => {
    const sizes = [999_983, 999_979, 999_961, 999_953, 7];
    const found = buy(Rational.of(1_000_000_000), whole(...sizes));
    expect(found.proven).toBe(false);
    expect(found.over?.sign()).not.toBe(-1);
    expect(found.over?.lt(Rational.of(999_983))).toBe(true);
  });

  test('pounds and kilograms beside each other are counted exactly', () => {
    const pound = Rational.of(45359237, 100000);
    const found = buy(Rational.of(20_000), [Rational.of(750), pound.mul(Rational.of(5)), pound]);
    const ways = everyWay(Rational.of(20_000), [Rational.of(750), pound.mul(Rational.of(5)), pound]);
    const least = ways.reduce((a, b) => (b.holds.lt(a.holds) ? b : a)).holds;
    expect(String(found.holds)).toBe(String(least));
    expect(found.proven).toBe(true);
  });
});
