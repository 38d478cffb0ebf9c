import fc from 'fast-check';
import { expect, it } from 'vitest';
import { largest } from './simplex.js';

const row = fc.tuple(fc.integer({ min: -5, max: 5 }), fc.integer({ min: -5, max: 5 }));
const programs = fc.record({
  objective: row,
  rows: fc.array(row, { minLength: 1, maxLength: 7 }),
  limits: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 7, maxLength: 7 }),
});

/** The best corner of what two unknowns may be, within a large square around it: every pair of borders is tried. */
function bestCorner(objective: readonly number[], borders: readonly (readonly [number, number, number])[]): number {
  const [p = 0, q = 0] = objective;
  let best = Number.NEGATIVE_INFINITY;
  for (const [i, [a, b, c]] of borders.entries()) {
    for (const [d, e, f] of borders.slice(i + 1)) {
      const det = a * e - b * d;
      if (det === 0) continue;
      const [x, y] = [(c * e - b * f) / det, (a * f - c * d) / det];
      if (borders.every(([k, l, m]) => k * x + l * y <= m + 1e-7)) best = Math.max(best, p * x + q * y);
    }
  }
  return best;
}

it('finds the best corner, as trying every corner does', () => {
  fc.assert(
    fc.property(programs, ({ objective, rows, limits }) => {
      const square: (readonly [number, number, number])[] = [
        [1, 0, 1000],
        [-1, 0, 1000],
        [0, 1, 1000],
        [0, -1, 1000],
      ];
      const borders = [
        ...rows.map(([a, b], i): readonly [number, number, number] => [a, b, limits[i] ?? 0]),
        ...square,
      ];
      const found = largest(
        objective,
        borders.map(([a, b]) => [a, b]),
        borders.map(([, , c]) => c),
      );
      const [x = Number.NaN, y = Number.NaN] = found ?? [];
      for (const [a, b, c] of borders) expect(a * x + b * y).toBeLessThanOrEqual(c + 1e-6);
      expect(objective[0] * x + objective[1] * y).toBeCloseTo(bestCorner(objective, borders), 5);
    }),
    { numRuns: 500, seed: 5 },
  );
});

it('says when there is no end', () => {
  expect(largest([1, 0], [[0, 1]], [3])).toBeUndefined();
  expect(largest([0, 1], [[0, 1]], [3])?.[1]).toBeCloseTo(3);
});
