import type { Box } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { AXES, type Axis } from '../spec/sides.js';
import type { Bounds } from './solid.js';
import type { Vector } from './vector.js';

/** The volume two boxes share; undefined when they only touch or lie apart. Exact. */
export function common(a: Box, b: Box): Box | undefined {
  if (AXES.some((axis) => a.hi[axis].le(b.lo[axis]) || b.hi[axis].le(a.lo[axis]))) return undefined;
  const box = {
    lo: { x: Rational.max(a.lo.x, b.lo.x), y: Rational.max(a.lo.y, b.lo.y), z: Rational.max(a.lo.z, b.lo.z) },
    hi: { x: Rational.min(a.hi.x, b.hi.x), y: Rational.min(a.hi.y, b.hi.y), z: Rational.min(a.hi.z, b.hi.z) },
  };
  return AXES.every((axis) => box.lo[axis].lt(box.hi[axis])) ? box : undefined;
}

/** What is left of a box when another is taken out of it: at most six boxes, two slabs an axis. */
export function without(box: Box, taken: Box): readonly Box[] {
  const inner = common(box, taken);
  if (!inner) return [box];
  const left: Box[] = [];
  let core = box;
  for (const axis of AXES) {
    if (core.lo[axis].lt(inner.lo[axis])) left.push(cut(core, axis, core.lo[axis], inner.lo[axis]));
    if (inner.hi[axis].lt(core.hi[axis])) left.push(cut(core, axis, inner.hi[axis], core.hi[axis]));
    core = cut(core, axis, inner.lo[axis], inner.hi[axis]);
  }
  return left;
}

/** What is left of a box when all of `taken` are taken out of it. */
export function withoutAll(box: Box, taken: Iterable<Box>): readonly Box[] {
  let left: readonly Box[] = [box];
  for (const other of taken) left = left.flatMap((piece) => without(piece, other));
  return left;
}

/**
 * The same in doubles: sides are only compared and taken over, so that the boxes are those that `withoutAll` finds, but
 * for slivers that a double does not tell from nothing.
 */
export function boundsWithoutAll(bounds: Bounds, taken: readonly Bounds[]): readonly Bounds[] {
  let left: readonly Bounds[] = [bounds];
  for (const other of taken) {
    const now: Bounds[] = [];
    for (const piece of left) leaveOut(piece, other, now);
    left = now;
  }
  return left;
}

function leaveOut(piece: Bounds, taken: Bounds, left: Bounds[]): void {
  for (const i of [0, 1, 2] as const) {
    if (piece.hi[i] <= taken.lo[i] || taken.hi[i] <= piece.lo[i]) {
      left.push(piece);
      return;
    }
  }
  const [lo, hi]: [number[], number[]] = [[...piece.lo], [...piece.hi]];
  for (const i of [0, 1, 2] as const) {
    const [from, to] = [Math.max(piece.lo[i], taken.lo[i]), Math.min(piece.hi[i], taken.hi[i])];
    if (piece.lo[i] < from) left.push({ lo: vectorOf(lo), hi: vectorOf(hi, i, from) });
    if (to < piece.hi[i]) left.push({ lo: vectorOf(lo, i, to), hi: vectorOf(hi) });
    [lo[i], hi[i]] = [from, to];
  }
}

const vectorOf = ([x = 0, y = 0, z = 0]: readonly number[], i?: 0 | 1 | 2, at = 0): Vector => [
  i === 0 ? at : x,
  i === 1 ? at : y,
  i === 2 ? at : z,
];

/** The same box with one axis' interval replaced. */
export function cut(box: Box, axis: Axis, lo: Rational, hi: Rational): Box {
  // Written out: copying an object with a computed key is far slower.
  const at = (own: Axis, whole: Rational, part: Rational): Rational => (own === axis ? part : whole);
  return {
    lo: { x: at('x', box.lo.x, lo), y: at('y', box.lo.y, lo), z: at('z', box.lo.z, lo) },
    hi: { x: at('x', box.hi.x, hi), y: at('y', box.hi.y, hi), z: at('z', box.hi.z, hi) },
  };
}

export const extentOf = (box: Box, axis: Axis): Rational => box.hi[axis].sub(box.lo[axis]);
