import type { Vector } from './exploded/vector.js';
import type { SceneTurn } from './scene.js';

/** A direction in a part's own frame, as it runs in the cabinet. */
export const wayOut = (turn: SceneTurn | undefined, [x, y, z]: Vector): Vector =>
  turn ? [x * turn.along[0] - y * turn.along[1], x * turn.along[1] + y * turn.along[0], z] : [x, y, z];

/** A place in a part's own frame, as it lies in the cabinet. */
export function placeOut(turn: SceneTurn | undefined, p: Vector): Vector {
  if (!turn) return p;
  const [x, y, z] = wayOut(turn, p);
  return [x + turn.origin[0], y + turn.origin[1], z];
}

/** A direction in the cabinet, as it runs in a part's own frame. */
export const wayIn = (turn: SceneTurn | undefined, [x, y, z]: Vector): Vector =>
  turn ? [x * turn.along[0] + y * turn.along[1], y * turn.along[0] - x * turn.along[1], z] : [x, y, z];

/** A place in the cabinet, as it lies in a part's own frame. */
export const placeIn = (turn: SceneTurn | undefined, [x, y, z]: Vector): Vector =>
  turn ? wayIn(turn, [x - turn.origin[0], y - turn.origin[1], z]) : [x, y, z];
