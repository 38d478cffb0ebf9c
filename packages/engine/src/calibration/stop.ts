import { Rational } from '../number/rational.js';
import type { MeasuredLength, Walls } from './base.js';

/**
 * How far a stop stands from where it was set, found from a test joint in which an edge stands on a face; more than nothing:
 * too far from the end.
 *
 * Let the stop be set to s and stand at s + e. The slot in the face then lies at s + e + b from the end, b being the base of
 * the machine, whatever it is; the slot in the edge lies at b from its reference face. Put together with the reference face
 * toward the end, that face stands at s + e + b − b: the base drops out, and what is measured from the end to it is s + e.
 * @param set what the stop was set to, mm
 * @param stands from the end to the reference face, mm
 * @param within how far that figure may be off, mm
 */
export const stopFromJoint = (set: Rational, stands: Rational, within: Rational): MeasuredLength => ({
  value: stands.sub(set),
  within,
});

/**
 * The same by the slot in the face alone, measured from the end to both its walls. The base does not drop out, so what it may
 * be off is added.
 * @param base of the machine to the middle of its slot, mm, and how far it may be off
 */
export function stopFromWalls(
  set: Rational,
  { nearer, farther }: Walls,
  base: MeasuredLength,
  within: Rational,
): MeasuredLength {
  const middle = nearer.add(farther).div(Rational.TWO);
  return { value: middle.sub(base.value).sub(set), within: within.add(base.within) };
}

/** Whether two figures for one length may both be right. */
export const agree = (a: MeasuredLength, b: MeasuredLength): boolean =>
  a.value.sub(b.value).abs().le(a.within.add(b.within));
