import { Rational } from '../number/rational.js';

/** A length that was found by measuring, mm: the truth lies no further from it than `within`. */
export interface MeasuredLength {
  readonly value: Rational;
  /** ≥ 0. */
  readonly within: Rational;
}

/** How far a measured figure may be off, mm: what calipers in a shop are good for. Common practice, no source. */
export const MEASURED_WITHIN = Rational.of(1, 20);

/** A test joint of two pieces of one sheet, both milled from their reference faces, one of them turned over. */
export interface TurnedJoint {
  /** Thickness of the pieces, as measured, mm. */
  readonly thickness: Rational;
  /** How far the reference face of the one stands proud of the plain face of the other, mm; less than nothing: set back. */
  readonly step: Rational;
}

/**
 * From a machine's base to the middle of its slot, found from a test joint of which one half is turned over.
 *
 * Let the machine mill at b from the face that its base lies on. In a joint whose reference faces look the same way both lie
 * at b from the connector: the faces are flush whatever b is, and the joint tells nothing. So one piece is turned over. Its
 * reference face then lies at b beyond the middle of the connector, and the plain face of the other piece at t − b beyond
 * it: the step is s = b − (t − b), and so b = (t + s) / 2. An error of the base shows twice, and one of measuring counts half.
 * The same holds in a face, with the end that the base is set against for the reference face.
 * @param within how far each of the two figures may be off, mm
 */
export function baseFromStep({ thickness, step }: TurnedJoint, within: Rational): MeasuredLength {
  return { value: thickness.add(step).div(Rational.TWO), within: within.add(within).div(Rational.TWO) };
}

/** The step that a base gives, mm: what the test joint shows where nothing is off. */
export const stepOf = (base: Rational, thickness: Rational): Rational => base.mul(Rational.TWO).sub(thickness);

/** A slot measured from the reference face to both its walls, mm; nearer < farther. */
export interface Walls {
  readonly nearer: Rational;
  readonly farther: Rational;
}

/** The base by one slot alone, and how wide it is milled. `within` as for a joint. */
export function baseFromWalls(
  { nearer, farther }: Walls,
  within: Rational,
): { readonly base: MeasuredLength; readonly kerf: MeasuredLength } {
  return {
    base: { value: nearer.add(farther).div(Rational.TWO), within },
    kerf: { value: farther.sub(nearer), within: within.mul(Rational.TWO) },
  };
}
