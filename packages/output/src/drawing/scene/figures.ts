import {
  AXES,
  type Axis,
  axisOf,
  type Box,
  highSide,
  isHigh,
  lowSide,
  type Point,
  Rational,
  type Side,
} from '@dryfit/engine';
import type { SceneBox, Triple } from '../scene.js';

/** Exact boxes into the figures of pens, and the distances a bench measures out of them. */
export const triple = (point: Point): Triple<number> => [point.x.toNumber(), point.y.toNumber(), point.z.toNumber()];

export const sceneBox = (box: Box): SceneBox => ({ lo: triple(box.lo), hi: triple(box.hi) });

export const INDEX: Readonly<Record<Axis, 0 | 1 | 2>> = { x: 0, y: 1, z: 2 };

/** Coordinate of a side of a box. */
export const planeOf = (box: Box, side: Side): Rational => (isHigh(side) ? box.hi : box.lo)[axisOf(side)];

/** The same of a box of figures. */
export const planeAt = (box: SceneBox, side: Side): number => (isHigh(side) ? box.hi : box.lo)[INDEX[axisOf(side)]];

/** How far in from each side of `part` along an axis the stretch `cut` begins and ends; never less than nothing. */
export function insetsOf(part: Box, cut: Box, axis: Axis) {
  const from = (side: Side, at: Rational) => Rational.max(Rational.ZERO, planeOf(part, side).sub(at).abs());
  const [low, high] = [lowSide(axis), highSide(axis)];
  return {
    low: { from: low, near: from(low, cut.lo[axis]), far: from(low, cut.hi[axis]) },
    high: { from: high, near: from(high, cut.hi[axis]), far: from(high, cut.lo[axis]) },
  };
}

/** What two boxes have in common, flat where they touch; undefined where there is a gap. */
export function common(a: SceneBox | undefined, b: SceneBox | undefined): SceneBox | undefined {
  if (!a || !b) return undefined;
  const lo = a.lo.map((value, i) => Math.max(value, b.lo[i] as number)) as unknown as Triple<number>;
  const hi = a.hi.map((value, i) => Math.min(value, b.hi[i] as number)) as unknown as Triple<number>;
  return AXES.every((axis) => lo[INDEX[axis]] <= hi[INDEX[axis]] + TOUCH) ? { lo, hi } : undefined;
}

/** Figures nearer than this are one, mm: the doubles of one exact plane may differ in their last places. */
export const TOUCH = 1e-6;
