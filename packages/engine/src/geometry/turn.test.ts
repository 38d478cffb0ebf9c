import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Turn } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { directionIn, directionOut, placeIn, placeOut } from './turn.js';
import { cross, dot, type Vector } from './vector.js';

const whole = fc.integer({ min: -2000, max: 2000 });
const vector = fc.tuple(whole, whole, whole) as fc.Arbitrary<Vector>;
const turn = fc
  .tuple(whole, whole, whole, whole)
  .filter(([, , x, y]) => x !== 0 || y !== 0)
  .map(
    ([ox, oy, x, y]): Turn => ({
      origin: { x: Rational.of(ox), y: Rational.of(oy) },
      along: { x: Rational.of(x), y: Rational.of(y) },
    }),
  );
const near = (a: Vector, b: Vector) => {
  for (const i of [0, 1, 2] as const) expect(a[i]).toBeCloseTo(b[i], 6);
};

describe('a turned frame', () => {
  it('gives a place back when it is told out and in again', () => {
    fc.assert(fc.property(turn, vector, (t, p) => near(placeIn(t, placeOut(t, p)), p)));
    fc.assert(fc.property(turn, vector, (t, d) => near(directionIn(t, directionOut(t, d)), d)));
  });

  it('keeps lengths, angles and hands', () => {
    fc.assert(
      fc.property(turn, vector, vector, vector, (t, a, b, c) => {
        const [p, q, r] = [directionOut(t, a), directionOut(t, b), directionOut(t, c)];
        const size = 1 + Math.abs(dot(a, b)) + Math.abs(dot(cross(a, b), c));
        expect(Math.abs(dot(p, q) - dot(a, b)) / size).toBeLessThan(1e-9);
        expect(Math.abs(dot(cross(p, q), r) - dot(cross(a, b), c)) / size).toBeLessThan(1e-6);
      }),
    );
  });

  it('runs along what it is told to run along', () => {
    const t: Turn = {
      origin: { x: Rational.of(10), y: Rational.of(20) },
      along: { x: Rational.of(3), y: Rational.of(4) },
    };
    near(placeOut(t, [5, 0, 7]), [13, 24, 7]);
    near(placeOut(t, [0, 5, 0]), [6, 23, 0]);
  });
});
