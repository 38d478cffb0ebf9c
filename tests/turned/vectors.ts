import { axisOf, outward, type Point, type Side, type Turn } from '@dryfit/engine';

export type V = readonly [number, number, number];
export const plus = (a: V, b: V, k = 1): V => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
export const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const distance = (a: V, b: V): number => Math.hypot(...plus(a, b, -1));
export const triple = (p: Point): V => [p.x.toNumber(), p.y.toNumber(), p.z.toNumber()];
export const normal = (side: Side): V => {
  const v: [number, number, number] = [0, 0, 0];
  v[{ x: 0, y: 1, z: 2 }[axisOf(side)] as 0] = outward(side);
  return v;
};

/** Out of a turned frame, by an angle: another way than the drawing's and the engine's. */
export function out(turn: Turn | undefined, v: V, direction = false): V {
  if (!turn) return v;
  const angle = Math.atan2(turn.along.y.toNumber(), turn.along.x.toNumber());
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turned: V = [c * v[0] - s * v[1], s * v[0] + c * v[1], v[2]];
  return direction ? turned : plus(turned, [turn.origin.x.toNumber(), turn.origin.y.toNumber(), 0]);
}
