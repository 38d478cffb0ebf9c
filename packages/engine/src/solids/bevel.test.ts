import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vector } from '../geometry/vector.js';
import { workOut } from '../pipeline.js';
import { connectNone, flush, outer } from '../testing/joint-items.js';
import { sides } from '../testing/spec-builder.js';
import { bevelSolid } from './bevel.js';
import { bodyOf } from './body.js';

const context = workOut(
  sides()
    .part('top', 'level')
    .joint('mitre', 'top', 'between lh and rh', outer('top'), flush('rear', 'front'), connectNone('glued'))
    .build(),
);
const lh = context.part('lh');
const bevel = lh?.cuts.find((cut) => cut.kind === 'bevel');
if (!lh?.box || bevel?.kind !== 'bevel') throw new Error('the side is not mitred');
const wedge = bevelSolid(lh, bevel, undefined, [0, 0, 0]);

describe('what a mitre takes off a side', () => {
  it('is the corner inside of the line from the toe at 45°', () => {
    const slants = bodyOf(lh)?.slants ?? [];
    const left = ([x, z]: readonly [number, number]): boolean =>
      slants.every(({ normal, offset }) => normal[0] * x + normal[2] * z <= offset);
    // The side stands 720 high, its outer face at 0: the toe is at (0, 720), the heel at (17.7, 702.3).
    expect(left([1, 718.9])).toBe(true);
    expect(left([1, 719.1])).toBe(false);
    expect(left([17, 702.9])).toBe(true);
    expect(left([17, 703.1])).toBe(false);
  });

  it('is as near to any place as the nearest of its places is', () => {
    const corners = [
      [0, 720],
      [17.7, 720],
      [17.7, 702.3],
    ] as const;
    const place = fc.tuple(
      fc.double({ min: -40, max: 60, noNaN: true }),
      fc.double({ min: 660, max: 760, noNaN: true }),
    );
    fc.assert(
      fc.property(place, ([x, z]) => {
        const near = wedge?.nearest([x, 100, z]) as Vector;
        const found = Math.hypot(near[0] - x, near[2] - z);
        // Places all over the triangle, a grid of a hundredth of its sides.
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= 100; i++)
          for (let j = 0; j <= 100 - i; j++) {
            const [a, b, c] = [i / 100, j / 100, (100 - i - j) / 100];
            const [px, pz] = [0, 1].map(
              (k) => a * corners[0][k as 0] + b * corners[1][k as 0] + c * corners[2][k as 0],
            );
            least = Math.min(least, Math.hypot((px as number) - x, (pz as number) - z));
          }
        expect(found).toBeLessThanOrEqual(least + 1e-9);
        expect(found).toBeGreaterThan(least - 0.3);
        expect(near[1]).toBe(100);
      }),
      { numRuns: 50 },
    );
  });
});
