import type { Side } from '@dryfit/engine';

/** A direction or point as x, y, z. The engine's own vectors are not used here: what they come to is what is checked. */
export type Vector = readonly [number, number, number];

/** Where the sides of a part look. */
export const OUT: Readonly<Record<Side, Vector>> = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  front: [0, -1, 0],
  rear: [0, 1, 0],
  bottom: [0, 0, -1],
  top: [0, 0, 1],
};

export const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
/** The first and `k` times the second. */
export const plus = (a: Vector, b: Vector, k = 1): Vector => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const distance = (a: Vector, b: Vector): number => Math.hypot(...plus(a, b, -1));
/** The same direction, 1 long. */
export const unit = (a: Vector): Vector => times(a, 1 / Math.hypot(...a));
