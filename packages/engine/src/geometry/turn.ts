import type { Turn } from '../fit/fit.js';
import type { Vector } from './vector.js';

/** Unit vector of a turned frame's x, in the cabinet. */
export function alongOf({ along }: Turn): readonly [number, number] {
  const [x, y] = [along.x.toNumber(), along.y.toNumber()];
  const length = Math.hypot(x, y);
  return [x / length, y / length];
}

/** A direction told in a turned frame, as it runs in the cabinet. */
export function directionOut(turn: Turn | undefined, d: Vector): Vector {
  if (!turn) return d;
  const [x, y] = alongOf(turn);
  return [d[0] * x - d[1] * y, d[0] * y + d[1] * x, d[2]];
}

/** A place told in a turned frame, mm, as it lies in the cabinet. */
export function placeOut(turn: Turn | undefined, p: Vector): Vector {
  if (!turn) return p;
  const [x, y, z] = directionOut(turn, p);
  return [x + turn.origin.x.toNumber(), y + turn.origin.y.toNumber(), z];
}

/** A direction told in the cabinet, as it runs in a turned frame. */
export function directionIn(turn: Turn | undefined, d: Vector): Vector {
  if (!turn) return d;
  const [x, y] = alongOf(turn);
  return [d[0] * x + d[1] * y, d[1] * x - d[0] * y, d[2]];
}

/** A place told in the cabinet, mm, as it lies in a turned frame. */
export function placeIn(turn: Turn | undefined, p: Vector): Vector {
  if (!turn) return p;
  return directionIn(turn, [p[0] - turn.origin.x.toNumber(), p[1] - turn.origin.y.toNumber(), p[2]]);
}
