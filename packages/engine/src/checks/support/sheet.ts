import type { FittedPart } from '../../fit/fit.js';
import type { Rational } from '../../number/rational.js';
import { thicknessOf } from '../../sizes/thickness.js';
import { type Axis, highSide, lowSide, thicknessAxis } from '../../spec/sides.js';
import type { CheckContext } from '../check.js';

/** What has been worked out for each part: nearly every check of slots asks for it. */
const known = new WeakMap<FittedPart, Map<Axis, Rational>>();

/** A part's extent along an axis at the small end of what its inputs allow, mm. */
export function smallest(context: CheckContext, part: FittedPart, axis: Axis): Rational | undefined {
  const own = known.get(part) ?? new Map<Axis, Rational>();
  known.set(part, own);
  const found = own.get(axis) ?? part.extent[axis]?.sub(strayOf(context, part, axis).minus);
  if (found) own.set(axis, found);
  return found;
}

/** A part's thickness at the thin end of its sheet's tolerance, mm. */
export const thinnest = (context: CheckContext, part: FittedPart): Rational | undefined =>
  smallest(context, part, thicknessAxis(part.attitude));

/** A part's thickness at the thick end of its sheet's tolerance, mm. */
export function thickest(context: CheckContext, part: FittedPart): Rational | undefined {
  const axis = thicknessAxis(part.attitude);
  return part.extent[axis]?.add(strayOf(context, part, axis).plus);
}

function strayOf({ solved, spec }: CheckContext, part: FittedPart, axis: Axis) {
  const { planes } = solved.system;
  if (part.turn && axis === thicknessAxis(part.attitude)) return solved.strayOf(thicknessOf(spec, part.material).terms);
  return solved.stray(planes.side(part.id, highSide(axis)), planes.side(part.id, lowSide(axis)));
}
