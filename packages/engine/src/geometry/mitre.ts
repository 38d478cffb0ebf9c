import { addBounded, type Bounded, boundedOf, mulBounded, sqrtBounded, subBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';

const TWO = Rational.TWO;
const half = (b: Bounded): Bounded => ({ value: b.value / 2, error: b.error / 2 });
const ROOT_HALF = half(sqrtBounded(TWO));

/** Degrees off square of the ends that meet in a mitre at a square corner. */
export const SQUARE_MITRE = 45;

/** Far above what sines, cosines and an angle in doubles are off by, in parts of the result. */
const TRIGONOMETRY = 1e-13;
const near = (value: number): Bounded => ({ value, error: Math.abs(value) * TRIGONOMETRY });

/** Cosine of a bevel, by its angle off square in degrees. */
export const cosine = (angle: number): Bounded =>
  angle === SQUARE_MITRE ? ROOT_HALF : near(Math.cos((angle * Math.PI) / 180));
export const sine = (angle: number): Bounded =>
  angle === SQUARE_MITRE ? ROOT_HALF : near(Math.sin((angle * Math.PI) / 180));

/** r over the cosine of a bevel. */
function overCosine(r: Rational, angle: number): Bounded {
  if (angle === SQUARE_MITRE) {
    const root = sqrtBounded(r.mul(r).mul(TWO));
    return r.sign() < 0 ? { value: -root.value, error: root.error } : root;
  }
  return near(r.toNumber() / Math.cos((angle * Math.PI) / 180));
}

/** Length of a mitre face across a part of thickness t, mm: t/cos β, β being its angle off square. */
export const mitreFace = (thickness: Rational, angle = SQUARE_MITRE): Bounded => overCosine(thickness, angle);

/**
 * Material under the outer face beside a slot square to a mitre face, mm: (a − k/2)·cos β − p·sin β, for a slot `a`
 * from the toe, `kerf` wide and `plunge` deep (plane geometry). Negative when it breaks out.
 */
export function mitreSkin(fromToe: Rational, kerf: Rational, plunge: Rational, angle = SQUARE_MITRE): Bounded {
  const edge = fromToe.sub(kerf.div(TWO));
  if (angle === SQUARE_MITRE) return mulBounded(boundedOf(edge.sub(plunge)), ROOT_HALF);
  return subBounded(mulBounded(boundedOf(edge), cosine(angle)), mulBounded(boundedOf(plunge), sine(angle)));
}

/** Material from a slot to the heel corner along the mitre face, mm: m − a − k/2. The heel is obtuse, so the corner is nearest. */
export function mitreWall(thickness: Rational, fromToe: Rational, kerf: Rational, angle = SQUARE_MITRE): Bounded {
  return subBounded(mitreFace(thickness, angle), boundedOf(fromToe.add(kerf.div(TWO))));
}

/**
 * Where a slot may lie on a mitre face, as distances from the toe, mm:
 * [k/2 + (skin + p·sin β)/cos β, m − k/2 − wall]. `from` > `to` when there is no room.
 */
export function mitreWindow(
  thickness: Rational,
  kerf: Rational,
  plunge: Rational,
  skin: Rational,
  wall: Rational,
  angle = SQUARE_MITRE,
): { readonly from: Bounded; readonly to: Bounded } {
  const halfKerf = boundedOf(kerf.div(TWO));
  const deep = angle === SQUARE_MITRE ? boundedOf(plunge) : mulBounded(boundedOf(plunge), tangent(angle));
  const from = addBounded(addBounded(halfKerf, deep), overCosine(skin, angle));
  const to = subBounded(subBounded(mitreFace(thickness, angle), halfKerf), boundedOf(wall));
  return { from, to };
}

/** How far a bevelled end comes in for each mm of thickness. */
export const tangent = (angle: number): Bounded =>
  angle === SQUARE_MITRE ? { value: 1, error: 0 } : near(Math.tan((angle * Math.PI) / 180));
