import type { FittedPart } from '@dryfit/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bodyOf, spacesOf } from '../../packages/engine/src/solids/body.js';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { fitText } from '../support/read.js';
import { type Corner, written } from './corner.js';

type P = readonly [number, number];
const THICK = 17.7;

/** A line in plan, as a point and a direction with what it bounds to its left. */
interface Line {
  readonly at: P;
  readonly way: P;
}

const line = (from: P, to: P): Line => {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return { at: from, way: [(to[0] - from[0]) / length, (to[1] - from[1]) / length] };
};
/** The same line moved to its left. */
const inside = ({ at, way }: Line, by: number): Line => ({ at: [at[0] - way[1] * by, at[1] + way[0] * by], way });
const meet = (a: Line, b: Line): P => {
  const turn = a.way[0] * b.way[1] - a.way[1] * b.way[0];
  const t = ((b.at[0] - a.at[0]) * b.way[1] - (b.at[1] - a.at[1]) * b.way[0]) / turn;
  return [a.at[0] + a.way[0] * t, a.at[1] + a.way[1] * t];
};

/** Plans of a unit with its front right corner cut off, by where lines meet: nothing of angles or bevels. */
function plans(w: number, d: number, a: number, b: number): Readonly<Record<string, readonly P[]>> {
  const outline: readonly P[] = [
    [0, 0],
    [w - a, 0],
    [w, b],
    [w, d],
    [0, d],
  ];
  const [front, cant, right, rear, left] = outline.map((p, i) => line(p, outline[(i + 1) % 5] as P)) as [
    Line,
    Line,
    Line,
    Line,
    Line,
  ];
  const inner = (one: Line) => inside(one, THICK);
  return {
    base: outline,
    face: [outline[1] as P, outline[2] as P, meet(inner(cant), inner(right)), meet(inner(cant), inner(front))],
    stub: [meet(front, inner(left)), outline[1] as P, meet(inner(front), inner(cant)), meet(inner(front), inner(left))],
    end: [outline[2] as P, meet(right, inner(rear)), meet(inner(right), inner(rear)), meet(inner(right), inner(cant))],
  };
}

/** How far inside a convex outline a point lies; less than nothing outside. */
const depthIn = (outline: readonly P[], [x, y]: P): number =>
  Math.min(
    ...outline.map((from, i) => {
      const { at, way } = line(from, outline[(i + 1) % outline.length] as P);
      return way[0] * (y - at[1]) - way[1] * (x - at[0]);
    }),
  );

function depthInBody(part: FittedPart, [x, y]: P): number {
  const body = bodyOf(part);
  if (!body) throw new Error(`${part.id} has no body`);
  const z = (body.bounds.lo[2] + body.bounds.hi[2]) / 2;
  return Math.min(
    ...[...spacesOf(body.bounds), ...body.slants].map(
      ({ normal: [i, j, k], offset }) => (offset - (i * x + j * y + k * z)) / Math.hypot(i, j, k),
    ),
  );
}

const whole = (min: number, max: number) => fc.integer({ min, max });

test('bodies of canted, turned and mitred parts are those that the lines of the plan enclose', async () => {
  let [within, without] = [0, 0];
  const outlines = fc.tuple(whole(520, 800), whole(520, 800), whole(180, 330), whole(180, 330));
  const anywhere = fc.array(fc.tuple(whole(0, 1000), whole(0, 1000)), { minLength: 120, maxLength: 120 });
  await fc.assert(
    fc.asyncProperty(outlines, anywhere, async ([w, d, a, b], places) => {
      const corner: Corner = { x: 'right', y: 'front', wide: w, deep: d, legX: a, legY: b };
      const { fit } = await fitText(written(corner));
      const expected = plans(w, d, a, b);
      for (const [id, outline] of Object.entries(expected)) {
        const part = fit.parts.find((one) => one.id === id);
        if (!part) throw new Error(`there is no ${id}`);
        const xs = outline.map(([x]) => x);
        const ys = outline.map(([, y]) => y);
        for (const [u, v] of places) {
          // Over the part and a little around it.
          const p: P = [
            Math.min(...xs) - 5 + ((Math.max(...xs) - Math.min(...xs) + 10) * u) / 1000,
            Math.min(...ys) - 5 + ((Math.max(...ys) - Math.min(...ys) + 10) * v) / 1000,
          ];
          const wanted = depthIn(outline, p);
          if (Math.abs(wanted) < 1e-6) continue;
          expect(Math.sign(depthInBody(part, p)), `${id} at ${p}`).toBe(Math.sign(wanted));
          if (wanted > 0) within += 1;
          else without += 1;
        }
      }
    }),
    fixedFirst({ fixed: 8, numRuns: 20 }, outlines, anywhere),
  );
  expect(Math.min(within, without)).toBeGreaterThan(500);
});
