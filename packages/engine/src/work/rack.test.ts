import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Rational } from '../number/rational.js';
import { jig } from '../testing/shop-builder.js';
import { counted, mostOfEach, secondStack } from './rack.js';

const widths = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 8 });

function* subsets(items: readonly number[]): Generator<number[]> {
  for (let mask = 0; mask < 2 ** items.length; mask++) yield items.filter((_, i) => mask & (1 << i));
}

const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);

describe('a second stack of spacers', () => {
  test('is there if some other pieces of the shop, no more of them, are just as wide', () => {
    const seen = { same: 0, other: 0, none: 0 };
    fc.assert(
      fc.property(widths, fc.integer({ min: 1, max: 255 }), (owned, mask) => {
        const first = owned.filter((_, i) => mask & (1 << i));
        const rest = owned.filter((_, i) => !(mask & (1 << i)));
        fc.pre(first.length > 0);
        const exists = [...subsets(rest)].some((one) => sum(one) === sum(first) && one.length <= first.length);
        const found = secondStack(
          first.map((one) => Rational.of(one)),
          jig({ spacers: owned }),
        )?.map((one) => one.toNumber());
        expect(found !== undefined).toBe(exists);
        if (!found) {
          seen.none++;
          return;
        }
        expect(sum(found)).toBe(sum(first));
        // Out of what is left, each piece once.
        const left = [...rest];
        for (const piece of found) {
          expect(left).toContain(piece);
          left.splice(left.indexOf(piece), 1);
        }
        seen[found.join() === first.join() ? 'same' : 'other']++;
      }),
      { numRuns: 400 },
    );
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(5);
  });

  test('of several needs each width is wanted as often as the one that wants most of it', () => {
    const count = (...list: number[]) => counted(list.map((one) => Rational.of(one)));
    const most = mostOfEach([count(12, 10), count(12, 12, 6), count(6)]);
    expect(most.map(({ width, count }) => `${count} of ${width}`)).toEqual(['2 of 12', '1 of 10', '1 of 6']);
  });
});
