import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Rational } from '../number/rational.js';
import { rootSumSquare, single, stacked } from './stack.js';
import { contributor, randomStack } from './stacks.fixture.js';
import { normals, tryOut } from './trials.js';

const SAMPLES = 8000;
/**
 * Standard errors of mean and deviation are σ/√N and σ/√(2N); five of them are passed once in two million times, which
 * is often enough where every run draws eighty anew, and seven once in four hundred thousand million.
 */
const ERRORS = 5;
const ERRORS_ANEW = 7;

describe('trials', () => {
  test('of sums agree with root sum square within their standard error', () => {
    fc.assert(
      fc.property(randomStack(8), fc.integer({ min: 1, max: 1e6 }), ({ stack }, seed) => {
        const [tried] = tryOut([{ tried: { stack } }], SAMPLES, seed);
        const { middle, half } = rootSumSquare(stack);
        const sigma = half.value / 3;
        expect(Math.abs((tried?.mean ?? Number.NaN) - middle.toNumber())).toBeLessThanOrEqual(
          (ERRORS_ANEW * sigma) / Math.sqrt(SAMPLES) + 1e-12,
        );
        expect(Math.abs((tried?.deviation ?? Number.NaN) - sigma)).toBeLessThanOrEqual(
          (ERRORS_ANEW * sigma) / Math.sqrt(2 * SAMPLES) + 1e-12,
        );
      }),
      { numRuns: 40 },
    );
  });

  test('give the same for the same seed, and not for another', () => {
    fc.assert(
      fc.property(randomStack(4), fc.integer({ min: 1, max: 1e6 }), ({ stack }, seed) => {
        const once = tryOut([{ tried: { stack } }], 50, seed);
        expect(tryOut([{ tried: { stack } }], 50, seed)).toEqual(once);
        const { squared } = rootSumSquare(stack);
        if (!squared.isZero()) expect(tryOut([{ tried: { stack } }], 50, seed + 1)).not.toEqual(once);
      }),
      { numRuns: 20 },
    );
  });

  test('draw a contributor once for all results, so that their difference has it no more', () => {
    fc.assert(
      fc.property(contributor('shared'), contributor('own'), (shared, own) => {
        const [a, b] = [single(shared), stacked(single(shared), single(own))];
        const results = tryOut(
          [
            { tried: { stack: a } },
            { tried: { stack: b } },
            { tried: { curve: { of: [shared, own], at: ([s = 0, o = 0]) => s + o - s } } },
          ],
          400,
          7,
        );
        const [first, second, difference] = results;
        expect((second?.mean ?? 0) - (first?.mean ?? 0)).toBeCloseTo(difference?.mean ?? Number.NaN, 9);
      }),
      { numRuns: 20 },
    );
  });

  test('count what lies beyond a limit: of a normal spread, 0.27 in a hundred beyond three deviations', () => {
    const one = { id: 'one', origin: 'saw' as const, words: ['one'], plus: Rational.ONE, minus: Rational.ONE };
    const samples = 200_000;
    const [tried] = tryOut([{ tried: { stack: single(one) }, limit: 1 }], samples, 11);
    const share = 0.0026998;
    expect(Math.abs((tried?.beyond ?? 0) - share)).toBeLessThan(ERRORS * Math.sqrt((share * (1 - share)) / samples));
  });
});

// Mean 0, deviation 1, skewness 0 and kurtosis 3 are what makes a normal spread; their standard errors for n draws are
// 1/√n, 1/√2n, √(6/n) and √(24/n).
test('the draws are normal: their first four moments are', () => {
  const n = 100_000;
  const next = normals(5);
  const draws = Array.from({ length: n }, next);
  const moment = (power: number) => draws.reduce((sum, x) => sum + x ** power, 0) / n;
  expect(Math.abs(moment(1))).toBeLessThan(ERRORS / Math.sqrt(n));
  expect(Math.abs(moment(2) - 1)).toBeLessThan(ERRORS * Math.sqrt(2 / n));
  expect(Math.abs(moment(3))).toBeLessThan(ERRORS * Math.sqrt(15 / n));
  expect(Math.abs(moment(4) - 3)).toBeLessThan(ERRORS * Math.sqrt(96 / n));
});
