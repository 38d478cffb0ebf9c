import type { Range } from '../joints/place.js';
import { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import { type Axis, axisOf, isHigh, outward, type Side } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import { cantOf, legFrom } from './cant.js';

/**
 * What a part's cant leaves of a contact on its side `surface`, along `run`, where the contact is as wide as `band`
 * across it. On an edge of the corner the whole leg is gone; on a face only as much as the line of the cant cuts off the
 * nearest end of the band, so that the contact that is left is whole across its width. Exact.
 */
export function clipCant(
  solved: Solved,
  part: PartId,
  surface: Side,
  along: Range,
  run: Axis,
  band: Range,
): Range | undefined {
  const cant = cantOf(solved.spec, part);
  const end = cant?.corner.find((side) => axisOf(side) === run);
  const other = cant?.corner.find((side) => axisOf(side) !== run);
  if (!cant || end === undefined || other === undefined) return along;
  const [leg, away] = [legFrom(cant, end)?.value, legFrom(cant, other)?.value];
  const [plane, beside] = [solved.at(part, end), solved.at(part, other)];
  if (!leg || !away || !plane || !beside || leg.sign() <= 0 || away.sign() <= 0) return along;
  if (axisOf(surface) === axisOf(other) && surface !== other) return along;
  // How far in from the corner's other side the contact begins, in parts of that leg.
  const near = isHigh(other) ? beside.sub(band.hi) : band.lo.sub(beside);
  const share =
    surface === other || near.sign() <= 0
      ? Rational.ONE
      : Rational.max(Rational.ZERO, Rational.ONE.sub(near.div(away)));
  const limit = plane.sub(leg.mul(share).mul(Rational.of(outward(end))));
  const left = isHigh(end)
    ? { lo: along.lo, hi: Rational.min(along.hi, limit) }
    : { lo: Rational.max(along.lo, limit), hi: along.hi };
  return left.lo.lt(left.hi) ? left : undefined;
}
