import type { Point, Turn } from '@dryfit/engine';
import { plus, type Vector } from '../support/vectors.js';

export const triple = (p: Point): Vector => [p.x.toNumber(), p.y.toNumber(), p.z.toNumber()];

/** Out of a turned frame, by an angle: another way than the drawing's and the engine's. */
export function out(turn: Turn | undefined, v: Vector, direction = false): Vector {
  if (!turn) return v;
  const angle = Math.atan2(turn.along.y.toNumber(), turn.along.x.toNumber());
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turned: Vector = [c * v[0] - s * v[1], s * v[0] + c * v[1], v[2]];
  return direction ? turned : plus(turned, [turn.origin.x.toNumber(), turn.origin.y.toNumber(), 0]);
}
