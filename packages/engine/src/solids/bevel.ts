import type { Cut, FittedCant, FittedPart } from '../fit/fit.js';
import { place, type Shape, type Solid } from '../geometry/solid.js';
import { add, negate, normal, type Vector } from '../geometry/vector.js';
import type { Rational } from '../number/rational.js';
import { axisOf, highSide, lowSide, outward, thirdAxis } from '../spec/sides.js';
import { boundsOfBox, INDEX, planeOf, slopeOf } from './body.js';

/**
 * What a bevel takes off the end of a part, as a body: a wedge along the whole end, from nothing at the toe to its
 * full width at the inner face of the thinnest sheet. `shift` moves the outer face of that sheet to its place.
 */
export function bevelSolid(
  part: FittedPart,
  cut: Extract<Cut, { kind: 'bevel' }>,
  thin: Rational | undefined,
  shift: Vector,
): Solid | undefined {
  const box = part.box && boundsOfBox(part.box);
  const line = thirdAxis(axisOf(cut.side), axisOf(cut.outer));
  const thickness = (thin ?? part.extent[axisOf(cut.outer)])?.toNumber();
  if (!box || line === undefined || thickness === undefined || !(thickness > 0)) return undefined;
  const origin: [number, number, number] = [0, 0, 0];
  origin[INDEX[axisOf(cut.side)]] = planeOf(box, cut.side);
  origin[INDEX[axisOf(cut.outer)]] = planeOf(box, cut.outer);
  const [from, to] = [planeOf(box, lowSide(line)), planeOf(box, highSide(line))];
  origin[INDEX[line]] = (from + to) / 2;
  return place(wedgeShape(to - from, thickness, slopeOf(cut)), {
    origin: add(origin, shift),
    u: normal(highSide(line)),
    v: negate(normal(cut.side)),
    w: negate(normal(cut.outer)),
  });
}

/** What a cant takes off a corner of a part, as a body: a three-sided prism through the whole thickness. */
export function cantSolid(part: FittedPart, { corner: [a, b], legs }: FittedCant, shift: Vector): Solid | undefined {
  const box = part.box && boundsOfBox(part.box);
  const line = thirdAxis(axisOf(a), axisOf(b));
  if (!box || line === undefined) return undefined;
  const [first, second] = [legs[0].toNumber(), legs[1].toNumber()];
  const origin: [number, number, number] = [0, 0, 0];
  origin[INDEX[axisOf(a)]] = planeOf(box, a);
  origin[INDEX[axisOf(b)]] = planeOf(box, b) - outward(b) * second;
  const [from, to] = [planeOf(box, lowSide(line)), planeOf(box, highSide(line))];
  origin[INDEX[line]] = (from + to) / 2;
  return place(wedgeShape(to - from, second, first / second), {
    origin: add(origin, shift),
    u: normal(highSide(line)),
    v: negate(normal(a)),
    w: normal(b),
  });
}

/** A prism `along` long over the triangle (0, 0), (0, depth), (slope · depth, depth) of v and w. */
function wedgeShape(along: number, depth: number, slope: number): Shape {
  const half = along / 2;
  const corners = [
    [0, 0],
    [0, depth],
    [slope * depth, depth],
  ] as const;
  return {
    nearest(u, v, w) {
      const [y, z] = nearestInWedge(v, w, depth, slope);
      return [Math.max(-half, Math.min(u, half)), y, z];
    },
    farthest(u, v, w) {
      const reach = (corner: readonly [number, number]): number => corner[0] * v + corner[1] * w;
      const [y, z] = corners.reduce((most, corner) => (reach(corner) > reach(most) ? corner : most));
      return [u < 0 ? -half : half, y, z];
    },
  };
}

/** In the triangle itself, else on the slope, on the end or on the inner face. */
function nearestInWedge(v: number, w: number, depth: number, slope: number): readonly [number, number] {
  if (v >= 0 && w <= depth && v <= slope * w) return [v, w];
  const clamp = (x: number, hi: number): number => Math.max(0, Math.min(x, hi));
  const along = clamp((slope * v + w) / (1 + slope * slope), depth);
  const places = [
    [slope * along, along],
    [0, clamp(w, depth)],
    [clamp(v, slope * depth), depth],
  ] as const;
  const off = ([y, z]: readonly [number, number]): number => Math.hypot(y - v, z - w);
  return places.reduce((near, other) => (off(other) < off(near) ? other : near));
}
