import { AXES, axisOf, highSide, lowSide, SIDES, type Side } from '@dryfit/engine';
import { planeAt, TOUCH } from '../scene/figures.js';
import type { SceneBox, SceneCut, ScenePart } from '../scene.js';
import { AXIS_NUMBER, cross, dot, minus, normalOf, plus, times, unit, type Vector } from './vector.js';

/** A flat face of a body, its corners in order. */
export interface Face {
  /** The side of the part it belongs to; a bevel's is the end it stands at, a cant's the first of its corner. */
  readonly side: Side;
  readonly bevel: boolean;
  readonly normal: Vector;
  readonly corners: readonly Vector[];
}

/** Everything on the one side of a plane: n·p ≤ at. */
export interface HalfSpace {
  readonly normal: Vector;
  readonly at: number;
}

/** The material of a part: its box, less its notches, less what its bevels and its cant take off. */
export interface Material {
  readonly box: SceneBox;
  readonly notches: readonly SceneBox[];
  readonly bevels: readonly (HalfSpace & { readonly side: Side })[];
}

/** A convex piece of a part. */
export interface Piece {
  readonly faces: readonly Face[];
  readonly points: readonly Vector[];
}

export function materialOf(part: ScenePart, box: SceneBox): Material {
  const notches = part.cuts.filter(({ kind }) => kind === 'notch').map((cut) => cut.box);
  const bevels = part.cuts.flatMap((cut) => {
    if (cut.outer === undefined) return [];
    if (cut.kind === 'cant') return [cantOf(cut, cut.outer)];
    if (cut.kind !== 'bevel') return [];
    const angle = ((cut.angle ?? 45) * Math.PI) / 180;
    const normal = minus(times(normalOf(cut.surface), Math.cos(angle)), times(normalOf(cut.outer), Math.sin(angle)));
    const on = (side: Side): Vector => times(unit(axisOf(side)), planeAt(box, side));
    const toe = plus(on(cut.surface), on(cut.outer));
    return [{ side: cut.surface, normal, at: dot(normal, toe) }];
  });
  return { box, notches, bevels };
}

/** The plane of a cant runs from where its box has the one side and the inner end of the other to the other way about. */
function cantOf({ surface, box }: SceneCut, outer: Side): Material['bevels'][number] {
  const size = (side: Side): number => {
    const i = AXIS_NUMBER[axisOf(side)];
    return box.hi[i] - box.lo[i];
  };
  const steep = plus(times(normalOf(surface), 1 / size(surface)), times(normalOf(outer), 1 / size(outer)));
  const normal = times(steep, 1 / Math.hypot(...steep));
  const end = times(plus(box.lo, box.hi), 0.5);
  return { side: surface, normal, at: dot(normal, end) };
}

/** A part in convex pieces, cut up along the walls of its notches. */
export function piecesOf(material: Material): readonly Piece[] {
  const grid = AXES.map((axis) => {
    const i = AXIS_NUMBER[axis];
    const { lo, hi } = material.box;
    const walls = material.notches.flatMap((notch) => [notch.lo[i], notch.hi[i]]);
    const inner = walls.filter((at) => at > lo[i] + TOUCH && at < hi[i] - TOUCH);
    return [lo[i], ...[...new Set(inner)].sort((a, b) => a - b), hi[i]];
  }) as [number[], number[], number[]];
  const stretches = grid.map((at) => at.slice(1).map((to, i) => [at[i] as number, to] as const));
  const [xs = [], ys = [], zs = []] = stretches;
  return xs.flatMap((x) =>
    ys.flatMap((y) =>
      zs.flatMap((z) => {
        const cell: SceneBox = { lo: [x[0], y[0], z[0]], hi: [x[1], y[1], z[1]] };
        const centre = times(plus(cell.lo, cell.hi), 0.5);
        return material.notches.some((notch) => holds(notch, centre)) ? [] : pieceOf(material, cell);
      }),
    ),
  );
}

const holds = (box: SceneBox, p: Vector): boolean =>
  ([0, 1, 2] as const).every((i) => box.lo[i] - TOUCH <= p[i] && p[i] <= box.hi[i] + TOUCH);

/** Whether there is wood at a point. */
export const isWood = ({ box, notches, bevels }: Material, p: Vector): boolean =>
  ([0, 1, 2] as const).every((i) => box.lo[i] < p[i] && p[i] < box.hi[i]) &&
  !notches.some((notch) => ([0, 1, 2] as const).every((i) => notch.lo[i] < p[i] && p[i] < notch.hi[i])) &&
  bevels.every(({ normal, at }) => dot(normal, p) < at);

function pieceOf(material: Material, cell: SceneBox): readonly Piece[] {
  let faces: readonly Face[] = SIDES.map((side) => ({
    side,
    bevel: false,
    normal: normalOf(side),
    corners: cornersOf(cell, side),
  }));
  for (const { side, normal, at } of material.bevels) {
    const cap = capOf(faces, normal, at);
    faces = faces.flatMap((face) => {
      const corners = clip(face.corners, normal, at);
      return corners.length > 2 ? [{ ...face, corners }] : [];
    });
    if (cap.length > 2) faces = [...faces, { side, bevel: true, normal, corners: cap }];
  }
  if (faces.length < 4) return [];
  return [{ faces, points: faces.flatMap(({ corners }) => corners) }];
}

/** Corners of one side of a box, in order round it. */
function cornersOf(box: SceneBox, side: Side): readonly Vector[] {
  const axis = axisOf(side);
  const [a = 'x', b = 'y'] = AXES.filter((other) => other !== axis);
  const at = (p: Side, q: Side): Vector => {
    const corner: [number, number, number] = [0, 0, 0];
    for (const s of [side, p, q]) corner[AXIS_NUMBER[axisOf(s)]] = planeAt(box, s);
    return corner;
  };
  return [
    at(lowSide(a), lowSide(b)),
    at(highSide(a), lowSide(b)),
    at(highSide(a), highSide(b)),
    at(lowSide(a), highSide(b)),
  ];
}

/** What of a convex outline lies on the inner side of a plane (Sutherland and Hodgman). */
export function clip(corners: readonly Vector[], normal: Vector, at: number): readonly Vector[] {
  return corners.flatMap((p, i) => {
    const q = corners[(i + 1) % corners.length] as Vector;
    const [dp, dq] = [dot(normal, p) - at, dot(normal, q) - at];
    const kept = dp <= TOUCH ? [p] : [];
    const crosses = (dp < -TOUCH && dq > TOUCH) || (dp > TOUCH && dq < -TOUCH);
    return crosses ? [...kept, plus(p, times(minus(q, p), dp / (dp - dq)))] : kept;
  });
}

/** The outline a plane leaves in a convex body that it cuts. */
function capOf(faces: readonly Face[], normal: Vector, at: number): readonly Vector[] {
  const points: Vector[] = [];
  for (const { corners } of faces) {
    for (const p of clip(corners, normal, at)) {
      if (Math.abs(dot(normal, p) - at) > TOUCH * 10) continue;
      if (!points.some((q) => Math.hypot(...minus(p, q)) < TOUCH * 10)) points.push(p);
    }
  }
  const cut = faces.some(({ corners }) => corners.some((p) => dot(normal, p) > at + TOUCH));
  if (!cut || points.length < 3) return [];
  const centre = times(points.reduce(plus), 1 / points.length);
  const first = minus(points[0] as Vector, centre);
  const second = cross(normal, first);
  const angle = (p: Vector) => Math.atan2(dot(minus(p, centre), second), dot(minus(p, centre), first));
  return points.sort((p, q) => angle(p) - angle(q));
}

/** A piece in two along a plane that cuts through it; the cut itself is no face. */
export function split(piece: Piece, normal: Vector, at: number): readonly Piece[] {
  const back = times(normal, -1);
  return [clipped(piece, normal, at), clipped(piece, back, -at)];
}

function clipped(piece: Piece, normal: Vector, at: number): Piece {
  const faces = piece.faces.flatMap((face) => {
    const corners = clip(face.corners, normal, at);
    return corners.length > 2 ? [{ ...face, corners }] : [];
  });
  return { faces, points: faces.flatMap(({ corners }) => corners) };
}
