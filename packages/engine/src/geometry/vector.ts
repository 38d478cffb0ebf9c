import type { Side } from '../spec/sides.js';

/** A direction with small whole components; length is of no account. */
export type Vector = readonly [number, number, number];

const NORMALS: Record<Side, Vector> = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  front: [0, -1, 0],
  rear: [0, 1, 0],
  bottom: [0, 0, -1],
  top: [0, 0, 1],
};

/** The outward normal of a side. */
export const normal = (side: Side): Vector => NORMALS[side];

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const negate = (a: Vector): Vector => [-a[0], -a[1], -a[2]];
export const subtract = (a: Vector, b: Vector): Vector => add(a, negate(b));
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
/** Right-handed cross product. */
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
