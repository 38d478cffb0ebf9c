import type { Box } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { AXES, type Axis } from '../spec/sides.js';

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
