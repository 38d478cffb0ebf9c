import type { Box, Cut, FittedPart } from '../fit/fit.js';
import type { Bounds } from '../geometry/solid.js';
import type { Vector } from '../geometry/vector.js';
import { type Axis, axisOf, outward, type Side } from '../spec/sides.js';

/** All points p, mm in the cabinet frame, with normal · p ≤ offset; the normal's length is of no account. */
export interface HalfSpace {
  readonly normal: Vector;
  readonly offset: number;
}

/** What a part is sawn to before anything is cut into it: a box, less what its bevels take off. Convex. */
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
  const slants: HalfSpace[] = [];
  for (const cut of part.cuts) if (cut.kind === 'bevel') slants.push(bevelSlant(cut, box));
  return { box, bounds, slants };
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
function bevelSlant(cut: Bevel, box: Box): HalfSpace {
  const slope = slopeOf(cut);
  const [end, outer] = [outward(cut.side), outward(cut.outer)];
  const normal: [number, number, number] = [0, 0, 0];
  normal[INDEX[axisOf(cut.side)]] += end;
  normal[INDEX[axisOf(cut.outer)]] -= slope * outer;
  return { normal, offset: end * planeOf(box, cut.side) - slope * outer * planeOf(box, cut.outer) };
}

export const planeOf = (box: Box, side: Side): number =>
  (outward(side) === 1 ? box.hi : box.lo)[axisOf(side)].toNumber();

export const INDEX: Record<Axis, 0 | 1 | 2> = { x: 0, y: 1, z: 2 };

function unit(i: 0 | 1 | 2, sign: 1 | -1): Vector {
  const v: [number, number, number] = [0, 0, 0];
  v[i] = sign;
  return v;
}
