import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Rational } from '../number/rational.js';
import { halfOf, middleOf } from './contributor.js';
import { cornersOf, straightened } from './curve.js';
import { exceeds, furthest } from './judge.js';
import { contributions, less, rootSumSquare, single, stacked, times, worstCase } from './stack.js';
import { amountOf, contributor, randomStack } from './stacks.fixture.js';

describe('a sum of contributors', () => {
  test('has its worst case at a corner: no corner lies beyond it, and two lie on it', () => {
    fc.assert(
      fc.property(randomStack(8), ({ of, stack }) => {
        const corners = Array.from({ length: 2 ** of.length }, (_, corner) =>
          amountOf(stack, new Map(of.map((one, i) => [one.id, (corner >> i) & 1 ? one.plus : one.minus.neg()]))),
        );
        const [first = Rational.ZERO, ...rest] = corners;
        const { least, most } = worstCase(stack);
        expect(least.toString()).toBe(Rational.min(first, ...rest).toString());
        expect(most.toString()).toBe(Rational.max(first, ...rest).toString());
      }),
    );
  });

  test('taken for a curve has the same corners and the same root sum square', () => {
    fc.assert(
      fc.property(randomStack(6), ({ of, stack }) => {
        const exact = (value: number) => Rational.of(Math.round(value * 2 ** 40), 2 ** 40);
        const curve = {
          of,
          at: (off: readonly number[]) =>
            amountOf(stack, new Map(of.map((one, i) => [one.id, exact(off[i] ?? 0)]))).toNumber(),
        };
        const { least, most } = worstCase(stack);
        const corners = cornersOf(curve);
        expect(corners.least).toBeCloseTo(Math.min(least.toNumber(), corners.planned), 8);
        expect(corners.most).toBeCloseTo(Math.max(most.toNumber(), corners.planned), 8);
        const { middle, half } = rootSumSquare(stack);
        const line = straightened(curve);
        expect(line.middle).toBeCloseTo(middle.toNumber(), 8);
        expect(line.half).toBeCloseTo(half.value, 6);
      }),
      { numRuns: 50 },
    );
  });

  test('strays by root sum square no further than by the worst case, and by no less than its largest part', () => {
    fc.assert(
      fc.property(randomStack(10), ({ stack }) => {
        const { least, most } = worstCase(stack);
        const { middle, half } = rootSumSquare(stack);
        expect(middle.toNumber() + half.value).toBeLessThanOrEqual(most.toNumber() + 1e-9);
        expect(middle.toNumber() - half.value).toBeGreaterThanOrEqual(least.toNumber() - 1e-9);
        const [largest] = contributions(stack);
        if (largest) expect(half.value).toBeGreaterThanOrEqual((largest.most - largest.least) / 2 - 1e-9);
      }),
    );
  });

  test('ranks its contributors from the largest down, and their shares make up the whole', () => {
    fc.assert(
      fc.property(randomStack(10), ({ stack }) => {
        const ranked = contributions(stack);
        const sizes = ranked.map(({ least, most }) => most - least);
        expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
        const total = ranked.reduce((sum, { share }) => sum + share, 0);
        if (sizes.some((size) => size > 0)) expect(total).toBeCloseTo(1, 9);
      }),
    );
  });

  test('lets what two sums have in common drop out', () => {
    fc.assert(
      fc.property(contributor('shared'), contributor('own'), fc.integer({ min: 1, max: 9 }), (shared, own, n) => {
        const k = Rational.of(n, 3);
        const difference = less(stacked(single(shared, k), single(own)), times(single(shared), k));
        expect(difference.terms.map(({ of }) => of.id)).toEqual(['own']);
      }),
    );
  });

  test('is held against a limit without rounding', () => {
    fc.assert(
      fc.property(randomStack(6), ({ stack }) => {
        for (const reckoning of ['worst case', 'root sum square'] as const) {
          const { least, most } = worstCase(stack);
          const { middle, squared } = rootSumSquare(stack);
          // A limit that the result just meets: exact for the worst case, and for a root that is rational.
          const just = reckoning === 'worst case' ? Rational.max(least.abs(), most.abs()) : middle.abs();
          if (reckoning === 'root sum square' && !squared.isZero()) {
            expect(exceeds(stack, just, reckoning)).toBe(true);
            continue;
          }
          expect(exceeds(stack, just, reckoning)).toBe(false);
          if (just.sign() > 0) expect(exceeds(stack, just.sub(Rational.of(1, 10 ** 12)), reckoning)).toBe(true);
          expect(furthest(stack, reckoning).value).toBeCloseTo(just.toNumber(), 9);
        }
      }),
    );
  });

  test('of three and four tenths comes to five tenths by root sum square: a limit of that is kept, a hair less is not', () => {
    const tenth = (id: string, n: number) => ({
      id,
      origin: 'saw' as const,
      words: [id],
      plus: Rational.of(n, 10),
      minus: Rational.of(n, 10),
    });
    const stack = stacked(single(tenth('a', 3)), single(tenth('b', 4)));
    expect(exceeds(stack, Rational.of(1, 2), 'root sum square')).toBe(false);
    expect(exceeds(stack, Rational.of(1, 2).sub(Rational.of(1, 10 ** 12)), 'root sum square')).toBe(true);
  });
});

test('an unequal tolerance strays about its middle', () => {
  fc.assert(
    fc.property(contributor('one'), (one) => {
      expect(middleOf(one).add(halfOf(one)).toString()).toBe(one.plus.toString());
      expect(middleOf(one).sub(halfOf(one)).toString()).toBe(one.minus.neg().toString());
    }),
  );
});
