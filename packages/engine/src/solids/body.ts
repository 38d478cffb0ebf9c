import type { Box, Cut, FittedCant, FittedPart, Turn } from '../fit/fit.js';
import type { Bounds } from '../geometry/solid.js';
import { directionOut, placeOut } from '../geometry/turn.js';
import { dot, type Vector } from '../geometry/vector.js';
import { Rational } from '../number/rational.js';
import { type Axis, axisOf, outward, type Side } from '../spec/sides.js';

/** All points p, mm in the cabinet frame, with normal · p ≤ offset; the normal's length is of no account. */
export interface HalfSpace {
  readonly normal: Vector;
  readonly offset: number;
}

/**
 * What a part is sawn to before anything is cut into it: a box, less what its bevels and its cant take off. Convex. A
 * turned part's box is the one around it, with its faces and ends among what slants.
 */
export interface SawnBody {
  readonly box: Box;
  readonly bounds: Bounds;
  /** What keeps the body smaller than its box; none of most parts. */
  readonly slants: readonly HalfSpace[];
}

type Bevel = Extract<Cut, { kind: 'bevel' }>;

/** The body of a part; undefined while its place is not known or a size of it is nothing. */
export function bodyOf(part: FittedPart): SawnBody | undefined {
  const { box } = part;
  if (!box) return undefined;
  const bounds = boundsOfBox(box);
  if (([0, 1, 2] as const).some((i) => bounds.lo[i] >= bounds.hi[i])) return undefined;
  if (part.turn) return turnedBody(part, part.turn, bounds);
  const slants: HalfSpace[] = [];
  for (const cut of part.cuts) if (cut.kind === 'bevel') slants.push(bevelSlant(cut, bounds));
  if (part.cant) slants.push(cantSlant(part.cant, bounds));
  return { box, bounds, slants };
}

/** Its ends as they truly lie, not as its width is written: a mitre must not be pressed by what was rounded. */
function turnedBody(part: FittedPart, turn: Turn, { lo, hi }: Bounds): SawnBody {
  const own: Bounds = { lo, hi: [part.width?.value ?? hi[0], hi[1], hi[2]] };
  const sides = spacesOf(own).filter(({ normal }) => normal[2] === 0);
  const bevels = part.cuts.flatMap((cut) => (cut.kind === 'bevel' ? [bevelSlant(cut, own)] : []));
  const corners = [own.lo[0], own.hi[0]].flatMap((x) =>
    [own.lo[1], own.hi[1]].map((y) => placeOut(turn, [x, y, own.lo[2]])),
  );
  const on = (i: 0 | 1) => corners.map((corner) => corner[i]);
  const bounds: Bounds = {
    lo: [Math.min(...on(0)), Math.min(...on(1)), lo[2]],
    hi: [Math.max(...on(0)), Math.max(...on(1)), hi[2]],
  };
  const slants = [...sides, ...bevels].map((space) => turnedOut(turn, space));
  return { box: boxAround(bounds, part.box), bounds, slants };
}

/** A plane told in a turned frame, as it lies in the cabinet. */
export function turnedOut(turn: Turn | undefined, { normal, offset }: HalfSpace): HalfSpace {
  const out = directionOut(turn, normal);
  return { normal: out, offset: offset + dot(out, placeOut(turn, [0, 0, 0])) };
}

/** Millionths of a mm are room enough around what is known to far less. */
const FINE = 1_000_000;

function boxAround(bounds: Bounds, own: Box | undefined): Box {
  const low = (i: 0 | 1) => Rational.of(Math.floor(bounds.lo[i] * FINE), FINE);
  const high = (i: 0 | 1) => Rational.of(Math.ceil(bounds.hi[i] * FINE), FINE);
  const [bottom, top] = own ? [own.lo.z, own.hi.z] : [Rational.ZERO, Rational.ZERO];
  return { lo: { x: low(0), y: low(1), z: bottom }, hi: { x: high(0), y: high(1), z: top } };
}

/** On the line of a cant, distances inward from the two sides in parts of their legs add up to one; beyond it there is more. */
function cantSlant({ corner: [a, b], legs }: FittedCant, bounds: Bounds): HalfSpace {
  const normal: [number, number, number] = [0, 0, 0];
  let offset = -1;
  for (const [side, leg] of [[a, legs[0]] as const, [b, legs[1]] as const]) {
    const steep = outward(side) / leg.toNumber();
    normal[INDEX[axisOf(side)]] = steep;
    offset += steep * planeOf(bounds, side);
  }
  return { normal, offset };
}

export const boundsOfBox = ({ lo, hi }: Box): Bounds => ({
  lo: [lo.x.toNumber(), lo.y.toNumber(), lo.z.toNumber()],
  hi: [hi.x.toNumber(), hi.y.toNumber(), hi.z.toNumber()],
});

/** A box as the six planes around it. */
export function spacesOf({ lo, hi }: Bounds): readonly HalfSpace[] {
  return ([0, 1, 2] as const).flatMap((i) => [
    { normal: unit(i, 1), offset: hi[i] },
    { normal: unit(i, -1), offset: -lo[i] },
  ]);
}

/** How far a bevelled end comes in for each mm from the outer face: the tangent of its angle, exact at 45°. */
export const slopeOf = ({ angle }: Bevel): number => (angle === 45 ? 1 : Math.tan((angle * Math.PI) / 180));

/**
 * The toe lies where the end meets the outer face; from there the bevel comes in by `slope` for each mm of depth. In
 * distances v inward from the end and w inward from the outer face, what is left has v ≥ slope · w.
 */
function bevelSlant(cut: Bevel, box: Bounds): HalfSpace {
  const slope = slopeOf(cut);
  const [end, outer] = [outward(cut.side), outward(cut.outer)];
  const normal: [number, number, number] = [0, 0, 0];
  normal[INDEX[axisOf(cut.side)]] += end;
  normal[INDEX[axisOf(cut.outer)]] -= slope * outer;
  return { normal, offset: end * planeOf(box, cut.side) - slope * outer * planeOf(box, cut.outer) };
}

export const planeOf = (box: Bounds, side: Side): number =>
  (outward(side) === 1 ? box.hi : box.lo)[INDEX[axisOf(side)]];

export const INDEX: Record<Axis, 0 | 1 | 2> = { x: 0, y: 1, z: 2 };

function unit(i: 0 | 1 | 2, sign: 1 | -1): Vector {
  const v: [number, number, number] = [0, 0, 0];
  v[i] = sign;
  return v;
}
