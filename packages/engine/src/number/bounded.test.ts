import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addBounded,
  type Bounded,
  boundedOf,
  compareBounded,
  compareSqrt,
  mulBounded,
  sqrtBounded,
  subBounded,
} from './bounded.js';
import { Rational } from './rational.js';

const rational = fc
  .tuple(fc.integer({ min: -2000, max: 2000 }), fc.integer({ min: 1, max: 400 }))
  .map(([n, d]) => Rational.of(n, d));
const positive = rational.map((r) => r.abs());

/** The fraction a double is. */
function exact(x: number): Rational {
  let places = 0;
  while (!Number.isInteger(x * 2 ** places)) places += 1;
  return Rational.of(BigInt(x * 2 ** places), 2n ** BigInt(places));
}
const low = ({ value, error }: Bounded) => exact(value).sub(exact(error));
const high = ({ value, error }: Bounded) => exact(value).add(exact(error));
const holds = (bounded: Bounded, truth: Rational) => low(bounded).le(truth) && truth.le(high(bounded));

describe('bounded lengths', () => {
  it('enclose the square root, tightly', () => {
    fc.assert(
      fc.property(positive, (r) => {
        const root = sqrtBounded(r);
        expect(compareSqrt(r, low(root))).not.toBe(-1);
        expect(compareSqrt(r, high(root))).not.toBe(1);
        expect(root.error).toBeLessThanOrEqual(Math.abs(root.value) * 1e-15);
      }),
    );
    expect(sqrtBounded(Rational.ZERO)).toEqual({ value: 0, error: 0 });
    expect(() => sqrtBounded(Rational.of(-1))).toThrow(RangeError);
    const tiny = Rational.of(1n, 10n ** 700n);
    expect(compareSqrt(tiny, high(sqrtBounded(tiny)))).toBe(-1);
  });

  it('enclose sums, differences and products', () => {
    fc.assert(
      fc.property(rational, rational, rational, (a, b, c) => {
        const [x, y, z] = [boundedOf(a), boundedOf(b), boundedOf(c)];
        expect(holds(x, a)).toBe(true);
        expect(holds(addBounded(mulBounded(x, y), z), a.mul(b).add(c))).toBe(true);
        expect(holds(subBounded(mulBounded(x, y), z), a.mul(b).sub(c))).toBe(true);
      }),
    );
  });

  it('decide only what the bound decides', () => {
    const a = { value: 15.16, error: 0.01 };
    expect(compareBounded(a, Rational.of(10))).toBe(1);
    expect(compareBounded(a, 20)).toBe(-1);
    expect(compareBounded(a, Rational.parse('15.165') as Rational)).toBeUndefined();
    expect(compareBounded(a, 15.16)).toBeUndefined();
    expect(compareBounded({ value: 15.5, error: 0 }, Rational.of(31, 2))).toBe(0);
    // 0.1 is not a tenth: the double lies above it.
    expect(compareBounded({ value: 0.1, error: 0 }, Rational.of(1, 10))).toBe(1);
    expect(compareBounded({ value: Number.NaN, error: 0 }, 1)).toBeUndefined();
    expect(compareBounded({ value: Number.POSITIVE_INFINITY, error: 0 }, 1)).toBeUndefined();
  });

  it('never contradict exact comparison near the limit', () => {
    fc.assert(
      fc.property(positive, fc.integer({ min: -3, max: 3 }), (r, ulps) => {
        const root = sqrtBounded(r);
        const limit = exact(root.value).add(exact(Math.max(root.value, 1) * 2 ** -52).mul(Rational.of(ulps)));
        const found = compareBounded(root, limit);
        if (found !== undefined) expect(found).toBe(compareSqrt(r, limit));
      }),
    );
  });

  it('compare a square root exactly', () => {
    expect(compareSqrt(Rational.of(2), Rational.of(1414213562373, 1000000000000))).toBe(1);
    expect(compareSqrt(Rational.of(2), Rational.of(1414213562374, 1000000000000))).toBe(-1);
    expect(compareSqrt(Rational.of(9, 4), Rational.of(3, 2))).toBe(0);
    expect(compareSqrt(Rational.ZERO, Rational.of(-1))).toBe(1);
    expect(() => compareSqrt(Rational.of(-1), Rational.ONE)).toThrow(RangeError);
  });
});
