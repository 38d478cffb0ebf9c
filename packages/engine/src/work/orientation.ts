import type { Fit, FittedJoint, FittedPart, Half } from '../fit/fit.js';
import { AXES, isFace, type Side, thicknessAxis } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';

/** A side of a part that its slots are measured from, and the joints that ask for it. */
export interface Reference {
  readonly side: Side;
  /** Ids of joints, in the order of the fit. */
  readonly joints: readonly string[];
}

/** How a part is marked before anything is milled, so that it is never held the wrong way round. */
export interface Orientation {
  /**
   * Face sides: the faces that slots in edges and mitred ends are measured from; of a part that has none but slots in
   * faces, the faces that these are in, on which the machine stands. Most parts have one.
   */
  readonly faces: readonly Reference[];
  /** Face edges: what goes against the fence. Most parts have one. */
  readonly edges: readonly Reference[];
  /** Joints whose slots are measured along a cant, and so from none of the part's own sides. */
  readonly alongCant: readonly string[];
}

/** Where the slots of a part are measured from; empty where nothing is milled into it. */
export function orientationOf(fit: Pick<Fit, 'joints'>, part: Pick<FittedPart, 'id' | 'attitude'>): Orientation {
  const halves = fit.joints.flatMap((joint) =>
    joint.halves.filter((half) => half.part === part.id && half.slots.length > 0).map((half) => ({ joint, half })),
  );
  const own = halves.filter(({ half }) => !half.turn);
  const measured = own.filter(({ half }) => isFace(half.from.side, part.attitude));
  const faces = measured.length > 0 ? measured : own.filter(({ half }) => isFace(half.surface, part.attitude));
  return {
    faces: gathered(faces, (half) => (measured.length > 0 ? half.from.side : half.surface)),
    edges: gathered(own, (half) => half.datum),
    alongCant: halves.filter(({ half }) => half.turn).map(({ joint }) => joint.id),
  };
}

function gathered(
  halves: readonly { readonly joint: FittedJoint; readonly half: Half }[],
  sideOf: (half: Half) => Side,
): readonly Reference[] {
  const found = new Map<Side, string[]>();
  for (const { joint, half } of halves) {
    const side = sideOf(half);
    found.set(side, [...(found.get(side) ?? []), joint.id]);
  }
  return [...found].map(([side, joints]) => ({ side, joints: [...new Set(joints)] }));
}

/** Parts that one triangle is drawn across, in the order they are laid side by side: from left to right, from the bottom up, from front to rear. */
export interface MarkedTogether {
  readonly parts: readonly PartId[];
}

/**
 * The parts of a cabinet that belong together: like parts of one name, and single parts that stand alike and have faces of
 * one size, as two sides have or top and base. Turned parts are laid by themselves.
 */
export function markedTogether({ parts }: Pick<Fit, 'parts'>): readonly MarkedTogether[] {
  const sets = new Map<string, FittedPart[]>();
  for (const part of parts) {
    const key = setKey(part);
    const set = sets.get(key);
    if (set) set.push(part);
    else sets.set(key, [part]);
  }
  return [...sets.values()].map((set) => ({ parts: set.sort(asTheyStand).map(({ id }) => id) }));
}

function setKey({ id, kind, index, attitude, turn, extent, box }: FittedPart): string {
  if (turn || !box) return `alone ${id}`;
  const size = AXES.filter((axis) => axis !== thicknessAxis(attitude)).map((axis) => String(extent[axis]));
  return [attitude, index === undefined ? '' : kind, ...size].join(' ');
}

/** As a row along the thickness; where two lie equally far along it, by the other axes, so that the order is always the same. */
function asTheyStand(a: FittedPart, b: FittedPart): number {
  const along = thicknessAxis(a.attitude);
  for (const axis of [along, ...AXES]) {
    const order = a.box && b.box ? a.box.lo[axis].compare(b.box.lo[axis]) : 0;
    if (order !== 0) return order;
  }
  return (a.index ?? 0) - (b.index ?? 0) || (a.id < b.id ? -1 : 1);
}
