import { TOUCH } from '../scene/figures.js';
import type { Scene, SceneBox, ScenePart } from '../scene.js';
import { placeOut } from '../turn.js';
import { minus, plus, times, type Vector } from './vector.js';

/** A part that can be drawn: where it stands, how far it is pulled out from there, and what of it can be seen. */
export interface SpreadPart {
  readonly part: ScenePart;
  readonly box: SceneBox;
  readonly shift: Vector;
}

// At this the parts of a carcase stand clear of each other and still read as one cabinet.
const FARTHEST = 0.9;

const centreOf = (box: SceneBox): Vector => times(plus(box.lo, box.hi), 0.5);

/** Every part that has its place, pulled away from the middle of the cabinet in proportion to its distance from there. */
export function spread(scene: Scene, apart: number): readonly SpreadPart[] {
  const placed = scene.parts.flatMap((part) => (part.box ? [{ part, box: part.box }] : []));
  const whole = boxAround(placed.map(standing));
  const share = Math.max(0, Math.min(1, Number.isFinite(apart) ? apart : 0)) * FARTHEST;
  const shifted = placed.map(({ part, box }) => ({
    part,
    box,
    shift: times(minus(centreOf(standing({ part, box })), centreOf(whole)), share),
  }));
  return trimmed(scene, shifted);
}

/** The box around a part in the cabinet, which of a turned one is larger than its own. */
export function standing({ part: { turn }, box }: Pick<SpreadPart, 'part' | 'box'>): SceneBox {
  if (!turn) return box;
  const corners = [box.lo[0], box.hi[0]].flatMap((x) => [box.lo[1], box.hi[1]].map((y) => placeOut(turn, [x, y, 0])));
  const on = (i: 0 | 1) => corners.map((corner) => corner[i]);
  return {
    lo: [Math.min(...on(0)), Math.min(...on(1)), box.lo[2]],
    hi: [Math.max(...on(0)), Math.max(...on(1)), box.hi[2]],
  };
}

/** Smallest box around boxes; around none, nothing at the origin. */
export function boxAround(boxes: readonly SceneBox[]): SceneBox {
  const [first, ...rest] = boxes;
  if (!first) return { lo: [0, 0, 0], hi: [0, 0, 0] };
  const with_ = (pick: (a: number, b: number) => number, a: Vector, b: Vector): Vector => [
    pick(a[0], b[0]),
    pick(a[1], b[1]),
    pick(a[2], b[2]),
  ];
  return rest.reduce(
    (all, box) => ({ lo: with_(Math.min, all.lo, box.lo), hi: with_(Math.max, all.hi, box.hi) }),
    first,
  );
}

export const moved = ({ lo, hi }: SceneBox, by: Vector): SceneBox => ({ lo: plus(lo, by), hi: plus(hi, by) });

/**
 * Parts without what of them is still inside another: the edge of a back in its groove cannot be seen, and two
 * bodies of which one goes into the other cannot be ordered.
 */
export function trimmed(scene: Scene, parts: readonly SpreadPart[]): readonly SpreadPart[] {
  const byName = new Map(parts.map((one) => [one.part.part, one]));
  for (const joint of scene.joints) {
    const [own, host] = [byName.get(joint.entering), byName.get(joint.host)];
    if (!own || !host || own.part.turn || host.part.turn || isMitred(own.part, host.part)) continue;
    const kept = without(moved(own.box, own.shift), moved(host.box, host.shift));
    if (kept) byName.set(joint.entering, { ...own, box: moved(kept, times(own.shift, -1)) });
  }
  return parts.map((one) => byName.get(one.part.part) as SpreadPart);
}

const isMitred = (a: ScenePart, b: ScenePart): boolean =>
  [a, b].every(({ cuts }) => cuts.some(({ kind }) => kind === 'bevel'));

/** A box shortened at the end by which it goes into another, if it goes in by an end and not all through. */
function without(own: SceneBox, other: SceneBox): SceneBox | undefined {
  let best: { readonly by: number; readonly box: SceneBox } | undefined;
  for (const i of [0, 1, 2] as const) {
    const low = other.hi[i] - own.lo[i];
    const high = own.hi[i] - other.lo[i];
    const by = Math.min(low, high);
    if (by <= TOUCH) return undefined;
    if (by >= own.hi[i] - own.lo[i] - TOUCH || (best && best.by <= by)) continue;
    const [lo, hi] = [[...own.lo], [...own.hi]] as unknown as [[number, number, number], [number, number, number]];
    if (low < high) lo[i] = other.hi[i];
    else hi[i] = other.lo[i];
    best = { by, box: { lo, hi } };
  }
  return best?.box;
}
