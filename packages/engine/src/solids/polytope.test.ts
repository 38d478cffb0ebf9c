import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bounds } from '../geometry/solid.js';
import { spacesOf } from './body.js';
import { boundsOfPolytope, type Polytope, polytopeWithout } from './polytope.js';

const box = fc
  .tuple(
    ...([0, 1, 2] as const).map(() => fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: 1, max: 20 }))),
  )
  .map(
    ([x, y, z]): Bounds => ({
      lo: [x?.[0] ?? 0, y?.[0] ?? 0, z?.[0] ?? 0],
      hi: [(x?.[0] ?? 0) + (x?.[1] ?? 1), (y?.[0] ?? 0) + (y?.[1] ?? 1), (z?.[0] ?? 0) + (z?.[1] ?? 1)],
    }),
  );
const slant = fc
  .tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 }), fc.integer({ min: -30, max: 30 }))
  .filter(([x, y]) => x !== 0 || y !== 0)
  .map(([x, y, offset]) => ({ normal: [x, y, 0] as const, offset }));

const holds = (body: Polytope, p: readonly [number, number, number]): boolean =>
  body.every(({ normal, offset }) => normal[0] * p[0] + normal[1] * p[1] + normal[2] * p[2] <= offset);

describe('convex bodies', () => {
  it('leave, one taken out of another, just the places that are in the first and not in the second', () => {
    fc.assert(
      fc.property(
        box,
        box,
        slant,
        fc.infiniteStream(fc.double({ min: -21, max: 41, noNaN: true })),
        (a, b, cut, at) => {
          const [whole, taken] = [[...spacesOf(a), cut], spacesOf(b)];
          const left = boundsOfPolytope(whole) ? polytopeWithout(whole, taken) : [];
          for (let i = 0; i < 60; i++) {
            const [x, y, z] = [at.next().value, at.next().value, at.next().value] as [number, number, number];
            const expected = holds(whole, [x, y, z]) && !holds(taken, [x, y, z]);
            expect(left.filter((piece) => holds(piece, [x, y, z])).length > 0).toBe(expected);
          }
        },
      ),
    );
  });

  it('have the box around them that their places have', () => {
    fc.assert(
      fc.property(box, slant, (a, cut) => {
        const found = boundsOfPolytope([...spacesOf(a), cut]);
        // The corners of the box's own plan on the right side of the slant, and where it crosses the plan's sides.
        const plan = [
          [a.lo[0], a.lo[1]],
          [a.hi[0], a.lo[1]],
          [a.hi[0], a.hi[1]],
          [a.lo[0], a.hi[1]],
        ] as const;
        const value = ([x, y]: readonly [number, number]): number => cut.normal[0] * x + cut.normal[1] * y - cut.offset;
        const corners = plan.flatMap((p, i) => {
          const q = plan[(i + 1) % 4] as readonly [number, number];
          const [u, v] = [value(p), value(q)];
          const t = u / (u - v);
          const crossing = u * v < 0 ? [[p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])] as const] : [];
          return [...(u <= 0 ? [p] : []), ...crossing];
        });
        const xs = corners.map(([x]) => x);
        const wide = xs.length > 0 ? Math.max(...xs) - Math.min(...xs) : 0;
        const ys = corners.map(([, y]) => y);
        const deep = ys.length > 0 ? Math.max(...ys) - Math.min(...ys) : 0;
        if (wide < 1e-3 || deep < 1e-3) return;
        expect(found?.lo[0]).toBeCloseTo(Math.min(...xs), 6);
        expect(found?.hi[0]).toBeCloseTo(Math.max(...xs), 6);
        expect(found?.lo[1]).toBeCloseTo(Math.min(...ys), 6);
        expect(found?.hi[1]).toBeCloseTo(Math.max(...ys), 6);
      }),
    );
  });

  it('are nothing where only a film is left', () => {
    const body = spacesOf({ lo: [0, 0, 0], hi: [10, 10, 10] });
    expect(boundsOfPolytope([...body, { normal: [1, 1, 0], offset: 1e-8 }])).toBeUndefined();
    expect(boundsOfPolytope([...body, { normal: [1, 1, 0], offset: -1 }])).toBeUndefined();
  });
});
