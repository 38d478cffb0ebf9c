import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from './distance.js';
import { boxShape, discShape, holeShape, mortiseShape } from './shapes.js';
import { type Frame, place, type Shape, type Solid } from './solid.js';
import type { Vector } from './vector.js';

/** Every point of a grid that `inside` lets in: a shape as a heap of points, from its definition alone. */
function grid(lo: Vector, hi: Vector, steps: number, inside: (u: number, v: number, w: number) => boolean): Vector[] {
  const points: Vector[] = [];
  const at = (i: 0 | 1 | 2, n: number): number => lo[i] + ((hi[i] - lo[i]) * n) / steps;
  for (let i = 0; i <= steps; i++)
    for (let j = 0; j <= steps; j++)
      for (let k = 0; k <= steps; k++) {
        const p: Vector = [at(0, i), at(1, j), at(2, k)];
        if (inside(...p)) points.push(p);
      }
  return points;
}

interface Sampled {
  readonly shape: Shape;
  readonly points: readonly Vector[];
  /** No point of the shape is farther than this from a point of the grid. */
  readonly coarse: number;
}

const STEPS = 15;

function sampled(shape: Shape, lo: Vector, hi: Vector, inside: (u: number, v: number, w: number) => boolean): Sampled {
  const cell = Math.hypot(...([0, 1, 2] as const).map((i) => (hi[i] - lo[i]) / STEPS));
  return { shape, points: grid(lo, hi, STEPS, inside), coarse: cell };
}

const shapes = fc.oneof(
  fc
    .record({
      a: fc.integer({ min: 2, max: 60 }),
      b: fc.integer({ min: 2, max: 20 }),
      c: fc.integer({ min: 2, max: 20 }),
    })
    .map(({ a, b, c }) => sampled(boxShape(a, b, c), [-a / 2, -b / 2, 0], [a / 2, b / 2, c], () => true)),
  fc
    .record({ d: fc.integer({ min: 3, max: 15 }), c: fc.integer({ min: 5, max: 30 }) })
    .map(({ d, c }) =>
      sampled(holeShape(d, c), [-d / 2, -d / 2, 0], [d / 2, d / 2, c], (u, v) => Math.hypot(u, v) <= d / 2 + 1e-9),
    ),
  fc
    .record({
      l: fc.integer({ min: 15, max: 40 }),
      d: fc.integer({ min: 4, max: 12 }),
      c: fc.integer({ min: 5, max: 30 }),
    })
    .map(({ l, d, c }) =>
      sampled(mortiseShape(l, d, c), [-l / 2, -d / 2, 0], [l / 2, d / 2, c], (u, v) => {
        const beyond = Math.max(0, Math.abs(u) - (l - d) / 2);
        return Math.hypot(beyond, v) <= d / 2 + 1e-9;
      }),
    ),
  fc.record({ d: fc.integer({ min: 40, max: 120 }), p: fc.integer({ min: 4, max: 70 }) }).map(({ d, p }) => {
    const half = p >= d / 2 ? d / 2 : Math.sqrt(p * (d - p));
    return sampled(discShape(d, 4, p), [-half, -2, 0], [half, 2, p], (u, _, w) => {
      const beyond = Math.max(0, w - Math.max(0, p - d / 2));
      const height = beyond === 0 ? 0 : w - (p - d / 2);
      return p > d / 2 ? Math.hypot(u, height) <= d / 2 + 1e-9 : Math.hypot(u, w - (p - d / 2)) <= d / 2 + 1e-9;
    });
  }),
);

const ROOT = Math.SQRT1_2;
const frames: readonly Omit<Frame, 'origin'>[] = [
  { u: [1, 0, 0], v: [0, 1, 0], w: [0, 0, 1] },
  { u: [0, 1, 0], v: [0, 0, 1], w: [-1, 0, 0] },
  { u: [0, 0, 1], v: [1, 0, 0], w: [0, -1, 0] },
  { u: [0, 1, 0], v: [ROOT, 0, -ROOT], w: [ROOT, 0, ROOT] },
];
const frame = fc.record({
  at: fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 })),
  turned: fc.constantFrom(...frames),
});

const inCabinet = (p: Vector, { origin, u, v, w }: Frame): Vector => {
  const on = (i: 0 | 1 | 2): number => origin[i] + p[0] * u[i] + p[1] * v[i] + p[2] * w[i];
  return [on(0), on(1), on(2)];
};

describe('distance between two cuts', () => {
  it('lies between what two heaps of points allow', () => {
    fc.assert(
      fc.property(shapes, frame, shapes, frame, (one, atOne, two, atTwo) => {
        const frameOne: Frame = { origin: atOne.at, ...atOne.turned };
        const frameTwo: Frame = { origin: atTwo.at, ...atTwo.turned };
        const a = place(one.shape, frameOne);
        const b = place(two.shape, frameTwo);
        const found = distance(a, b, 3);
        const heapToBody = (heap: Sampled, at: Frame, body: Solid): number => {
          let least = Number.POSITIVE_INFINITY;
          for (const p of heap.points) {
            const q = inCabinet(p, at);
            const r = body.nearest(q);
            least = Math.min(least, Math.hypot(q[0] - r[0], q[1] - r[1], q[2] - r[2]));
          }
          return least;
        };
        for (const [least, coarse] of [
          [heapToBody(one, frameOne, b), one.coarse],
          [heapToBody(two, frameTwo, a), two.coarse],
        ] as const) {
          expect(found.value).toBeLessThanOrEqual(least + found.error);
          expect(found.value).toBeGreaterThanOrEqual(least - coarse - found.error);
        }
      }),
      { numRuns: 150, seed: 7 },
    );
  });

  it('takes nearest and farthest points that agree with a heap of points', () => {
    fc.assert(
      fc.property(
        shapes,
        fc.tuple(
          fc.integer({ min: -99, max: 99 }),
          fc.integer({ min: -99, max: 99 }),
          fc.integer({ min: -99, max: 99 }),
        ),
        (heap, place) => {
          const { shape, points, coarse } = heap;
          const near = shape.nearest(...place);
          const gap = Math.hypot(near[0] - place[0], near[1] - place[1], near[2] - place[2]);
          const least = Math.min(...points.map((p) => Math.hypot(p[0] - place[0], p[1] - place[1], p[2] - place[2])));
          expect(gap).toBeLessThanOrEqual(least + 1e-9);
          expect(gap).toBeGreaterThanOrEqual(least - coarse);
          const length = Math.hypot(...place) || 1;
          const along = (p: Vector): number => (p[0] * place[0] + p[1] * place[1] + p[2] * place[2]) / length;
          const most = Math.max(...points.map(along));
          expect(along(shape.farthest(...place))).toBeGreaterThanOrEqual(most - 1e-9);
          expect(along(shape.farthest(...place))).toBeLessThanOrEqual(most + coarse);
        },
      ),
      { numRuns: 300, seed: 7 },
    );
  });
});

describe('opposed arcs through a divider', () => {
  /** Two discs of 100 plunged 12.3 from both faces of 18, their middles `apart` along the run, in one plane. */
  const arcs = (apart: number) => {
    const shape = discShape(100, 4, 12.3);
    const one = place(shape, { origin: [0, 0, 0], u: [0, 1, 0], v: [0, 0, 1], w: [1, 0, 0] });
    const two = place(shape, { origin: [18, apart, 0], u: [0, 1, 0], v: [0, 0, 1], w: [-1, 0, 0] });
    return distance(one, two, 0);
  };

  // Plane geometry: the centres lie 18 + 2·(50 − 12.3) = 93.4 apart across the divider, so that with a cover k the
  // middles have to be √((100 + k)² − 93.4²) apart along the run.
  it.each([
    [0, 35.727],
    [1, 38.438],
    [2, 40.993],
    [3, 43.422],
  ])('leave %d of cover %d apart', (cover, apart) => {
    expect(arcs(apart).value).toBeCloseTo(cover, 3);
    expect(arcs(apart).error).toBeLessThan(1e-5);
  });

  it('clear each other at 35.73 and meet at 35.72', () => {
    expect(arcs(35.73).value).toBeGreaterThan(0);
    expect(arcs(35.72).value).toBe(0);
  });
});
