import type { Box, Cut, FittedPart, Point } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { AXES, type Axis } from '../spec/sides.js';

/**
 * Whether two parts of one size are the same piece lying the same way, their cuts and bands in the same order, as the
 * shelves of a row are: the one is the other moved. Where it says no, they may still be the same piece.
 */
export function liesAlike(one: FittedPart, two: FittedPart): boolean {
  if (!one.box || !two.box || one.attitude !== two.attitude || one.grain !== two.grain) return false;
  if (one.cant || two.cant || one.cuts.length !== two.cuts.length || one.bands.length !== two.bands.length)
    return false;
  const moved = between(one.box.lo, two.box.lo);
  return (
    one.bands.every(({ side, band }, i) => side === two.bands[i]?.side && band === two.bands[i]?.band) &&
    one.cuts.every((cut, i) => isMoved(cut, two.cuts[i] as Cut, moved))
  );
}

function isMoved(a: Cut, b: Cut, by: Point): boolean {
  if (a.kind === 'bevel' || b.kind === 'bevel')
    return a.kind === 'bevel' && b.kind === 'bevel' && a.side === b.side && a.outer === b.outer && a.angle === b.angle;
  if (a.kind !== b.kind || a.surface !== b.surface || a.run !== b.run) return false;
  if ('box' in a || 'box' in b) return 'box' in a && 'box' in b && isBoxMoved(a.box, b.box, by);
  if (a.turn || b.turn) return false;
  const toe = a.fromToe && b.fromToe ? a.fromToe.equals(b.fromToe) : a.fromToe === b.fromToe;
  const figures = a.diameter.equals(b.diameter) && a.width.equals(b.width) && a.depth.equals(b.depth);
  return toe && figures && a.length.value === b.length.value && isPointMoved(a.centre, b.centre, by);
}

const isBoxMoved = (a: Box, b: Box, by: Point): boolean => isPointMoved(a.lo, b.lo, by) && isPointMoved(a.hi, b.hi, by);

const isPointMoved = (a: Point, b: Point, by: Point): boolean =>
  AXES.every((axis) => (by[axis].isZero() ? b[axis].equals(a[axis]) : b[axis].sub(a[axis]).equals(by[axis])));

const between = (from: Point, to: Point): Point => {
  const on = (axis: Axis): Rational => (from[axis].equals(to[axis]) ? Rational.ZERO : to[axis].sub(from[axis]));
  return { x: on('x'), y: on('y'), z: on('z') };
};
