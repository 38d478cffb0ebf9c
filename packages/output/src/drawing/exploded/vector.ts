import { type Axis, axisOf, outward, type Side } from '@dryfit/engine';
import type { Triple } from '../scene.js';

export type Vector = Triple<number>;

export const AXIS_NUMBER: Readonly<Record<Axis, 0 | 1 | 2>> = { x: 0, y: 1, z: 2 };

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
export const middle = (a: Vector, b: Vector): Vector => times(plus(a, b), 0.5);
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Unit direction along an axis. */
export function unit(axis: Axis): Vector {
  const v: [number, number, number] = [0, 0, 0];
  v[AXIS_NUMBER[axis]] = 1;
  return v;
}

/** Outward normal of a side. */
export const normalOf = (side: Side): Vector => times(unit(axisOf(side)), outward(side));
