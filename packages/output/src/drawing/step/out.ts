import { boxAround, type SpreadPart, standing, trimmed } from '../exploded/spread.js';
import { times, type Vector } from '../exploded/vector.js';
import type { Scene, SceneStep } from '../scene.js';

/** How far a part that comes stands out from its place, in parts of the largest size of what is drawn. */
const OUT = 0.32;

/** What is drawn of a step: what is there in its place, and what comes pulled back along its way. */
export interface Drawn {
  readonly parts: readonly SpreadPart[];
  /** From where each part that comes stands to its place. */
  readonly ways: ReadonlyMap<string, Vector>;
}

export function drawnOut(scene: Scene, step: SceneStep): Drawn {
  const along = new Map(step.coming.map((one) => [one.part, one.along]));
  const there = new Set(step.placed);
  const seen = scene.parts.flatMap((part) => {
    const drawn = part.box && (along.has(part.part) || there.has(part.part));
    return drawn && part.box ? [{ part, box: part.box }] : [];
  });
  const { lo, hi } = boxAround(seen.map(standing));
  const far = OUT * Math.max(hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]);
  const longest = Math.max(...step.coming.map((one) => Math.hypot(...one.along)), 1e-9);
  const ways = new Map([...along].map(([part, way]) => [part, times(way, far / longest)]));
  const parts = seen.map(
    ({ part, box }): SpreadPart => ({ part, box, shift: times(ways.get(part.part) ?? [0, 0, 0], -1) }),
  );
  return { parts: trimmed(scene, parts), ways };
}
