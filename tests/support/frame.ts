import {
  type Axis,
  axisOf,
  type Box,
  type FittedPart,
  type Half,
  isHigh,
  outward,
  type Point,
  type Rational,
  type Side,
} from '@dryfit/engine';

/** Coordinate of a side of a box. */
export const planeOf = (box: Box, side: Side): Rational => (isHigh(side) ? box.hi : box.lo)[axisOf(side)];

/** Thickness of what a part still lacks on a side while it is milled: its band, when bands go on afterwards. */
export function bandAt(part: FittedPart, side: Side): Rational | undefined {
  return part.bands.find((band) => band.side === side)?.thickness;
}

/** Goes `distance` into a part from one of its sides. */
export const into = (from: Rational, side: Side, distance: Rational): Rational =>
  outward(side) === 1 ? from.sub(distance) : from.add(distance);

/** A point in x, y, z from a coordinate an axis. */
export const point = (coordinates: Record<Axis, Rational>): Point => coordinates;

/** The half of a joint in a part; for tests that know there is one. */
export function halfIn(halves: readonly Half[], part: string): Half {
  const half = halves.find((one) => one.part === part);
  if (!half) throw new Error(`no half in ${part}`);
  return half;
}
