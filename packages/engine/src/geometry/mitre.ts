import { addBounded, type Bounded, boundedOf, mulBounded, sqrtBounded, subBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';

const TWO = Rational.TWO;
const half = (b: Bounded): Bounded => ({ value: b.value / 2, error: b.error / 2 });
const ROOT_HALF = half(sqrtBounded(TWO));

/** Length of a 45° mitre face across a part of thickness t, mm: t·√2. */
export const mitreFace = (thickness: Rational): Bounded => sqrtBounded(thickness.mul(thickness).mul(TWO));

/**
 * Material under the outer face beside a slot square to a 45° mitre face, mm: (a − k/2)·cos 45° − p·sin 45°,
 * for a slot `a` from the toe, `kerf` wide and `plunge` deep (plane geometry). Negative when it breaks out.
 */
export function mitreSkin(fromToe: Rational, kerf: Rational, plunge: Rational): Bounded {
  return mulBounded(boundedOf(fromToe.sub(kerf.div(TWO)).sub(plunge)), ROOT_HALF);
}

/** Material from a slot to the heel corner along the mitre face, mm: m − a − k/2. The heel is obtuse, so the corner is nearest. */
export function mitreWall(thickness: Rational, fromToe: Rational, kerf: Rational): Bounded {
  return subBounded(mitreFace(thickness), boundedOf(fromToe.add(kerf.div(TWO))));
}

/**
 * Where a slot may lie on a 45° mitre face, as distances from the toe, mm:
 * [k/2 + (skin + p·sin 45°)/cos 45°, m − k/2 − wall]. `from` > `to` when there is no room.
 */
export function mitreWindow(
  thickness: Rational,
  kerf: Rational,
  plunge: Rational,
  skin: Rational,
  wall: Rational,
): { readonly from: Bounded; readonly to: Bounded } {
  const halfKerf = boundedOf(kerf.div(TWO));
  const from = addBounded(addBounded(halfKerf, boundedOf(plunge)), sqrtBounded(skin.mul(skin).mul(TWO)));
  const to = subBounded(subBounded(mitreFace(thickness), halfKerf), boundedOf(wall));
  return { from, to };
}
