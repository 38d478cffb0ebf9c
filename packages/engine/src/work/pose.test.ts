import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cross, dot, normal, type Vector } from '../geometry/vector.js';
import { AXES, axisOf, SIDES, type Side } from '../spec/sides.js';
import { type BenchPose, type PieceTurn, poseOf, turnsBetween } from './pose.js';

/** Rodrigues' formula: a vector turned about a unit axis by the right-hand rule. */
function turned(v: Vector, axis: Vector, degrees: number): Vector {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const side = cross(axis, v);
  const along = dot(axis, v) * (1 - c);
  return [0, 1, 2].map(
    (i) => (v[i as 0] ?? 0) * c + (side[i as 0] ?? 0) * s + (axis[i as 0] ?? 0) * along,
  ) as unknown as Vector;
}

/** Where the piece's own axes point in the operator's view: right, up, toward. */
const seen = (pose: BenchPose): readonly Vector[] =>
  AXES.map((_, i): Vector => [pose.right[i as 0], pose.up[i as 0], pose.toward[i as 0]]);

const OPERATOR: Record<PieceTurn['about'], Vector> = { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] };

const lying = (surface: Side, reference: Side, looks: 'up' | 'down'): BenchPose =>
  poseOf(
    { surface, role: 'edge', from: { kind: 'face', side: reference } } as never,
    { pose: { surface: 'edge', reference: looks } },
    {},
  );

const poses = SIDES.flatMap((surface) =>
  SIDES.filter((reference) => axisOf(reference) !== axisOf(surface)).map((reference) =>
    lying(surface, reference, 'up'),
  ),
);

const near = (a: readonly Vector[], b: readonly Vector[]): boolean =>
  a.every((v, i) => v.every((x, j) => Math.abs(x - (b[i]?.[j] ?? 9)) < 1e-9));

describe('turning a piece', () => {
  test('there are the 24 ways a block can lie, none of them mirrored', () => {
    expect(new Set(poses.map((pose) => JSON.stringify(seen(pose).map((v) => v.map((x) => x + 0))))).size).toBe(24);
    for (const { right, up, toward } of poses) expect(dot(cross(right, up), toward)).toBe(1);
  });

  test('from any way into any other, by two turns at most', () => {
    for (const from of poses)
      for (const to of poses) {
        const turns = turnsBetween(from, to);
        expect(turns.length).toBeLessThanOrEqual(2);
        let axes = seen(from);
        for (const { about, degrees } of turns) axes = axes.map((v) => turned(v, OPERATOR[about], degrees));
        expect([turns, near(axes, seen(to))]).toEqual([turns, true]);
        expect(turns.length === 0).toBe(near(seen(from), seen(to)));
      }
  });

  test('a cant comes round by its own angle', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 50 }),
        fc.integer({ min: -50, max: 50 }),
        fc.constantFrom(...poses),
        (x, y, to) => {
          const length = Math.hypot(x, y);
          const toward: Vector = [-x / length, -y / length, 0];
          const up = normal('top');
          const from: BenchPose = { toward, up, right: cross(up, toward), tilt: 0 };
          const turns = turnsBetween(from, to);
          let axes = seen(from);
          for (const { about, degrees } of turns) axes = axes.map((v) => turned(v, OPERATOR[about], degrees));
          expect([turns, near(axes, seen(to))]).toEqual([turns, true]);
        },
      ),
    );
  });

  test('a shelf turned flat on the bed has its other end toward the operator', () => {
    const [from, to] = [lying('left', 'bottom', 'down'), lying('right', 'bottom', 'down')];
    expect(turnsBetween(from, to)).toEqual([{ about: 'up', degrees: 180 }]);
    const [first, second] = [lying('right', 'top', 'up'), lying('right', 'bottom', 'up')];
    expect(turnsBetween(first, second)).toEqual([{ about: 'toward', degrees: 180 }]);
  });
});
