import type { Cut, Point } from '../fit/fit.js';
import { AXES, type Axis, axisOf, type Side, thirdAxis } from '../spec/sides.js';
import { cosine, SQUARE_MITRE, sine } from './mitre.js';
import { boxShape, discShape, holeShape, mortiseShape } from './shapes.js';
import { type Bounds, place, type Shape, type Solid } from './solid.js';
import { directionOut, placeOut } from './turn.js';
import { add, negate, normal, type Vector } from './vector.js';

/** A slot, mortise or hole. */
export type OpeningCut = Extract<Cut, { slot: string }>;
/** A groove, rebate, housing or notch. */
export type RecessCut = Extract<Cut, { box: unknown }>;

export const isOpening = (cut: Cut): cut is OpeningCut => 'slot' in cut;
export const isRecess = (cut: Cut): cut is RecessCut => 'box' in cut;

/** Where a slot lies on a mitre face: which side is the outer one, how far from the toe, mm, and how far off square, degrees. */
export interface OnMitre {
  readonly outer: Side;
  readonly fromToe: number;
  readonly angle?: number | undefined;
}

const UNIT: Record<Axis, Vector> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
const vector = (p: Point): Vector => [p.x.toNumber(), p.y.toNumber(), p.z.toNumber()];
const scaled = (v: Vector, k: number): Vector => [v[0] * k, v[1] * k, v[2] * k];

/** The volume of a groove, rebate, housing or notch. */
export function recessSolid(cut: RecessCut, shift: Vector = [0, 0, 0]): Solid {
  const lo = vector(cut.box.lo);
  const hi = vector(cut.box.hi);
  const origin: Vector = [(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2, lo[2]];
  const shape = boxShape(hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]);
  return place(shape, { origin: add(origin, shift), u: UNIT.x, v: UNIT.y, w: UNIT.z });
}

/** The volume of a slot, mortise or hole, cut square to its surface or to a mitre face. */
export function openingSolid(cut: OpeningCut, mitre?: OnMitre, shift: Vector = [0, 0, 0]): Solid {
  const { turn } = cut;
  const u = directionOut(turn, UNIT[cut.run]);
  const at = add(placeOut(turn, vector(cut.centre)), shift);
  if (!mitre) {
    const across = directionOut(turn, UNIT[thirdAxis(cut.run, axisOf(cut.surface)) ?? cut.run]);
    return place(shapeOf(cut), { origin: at, u, v: across, w: directionOut(turn, negate(normal(cut.surface))) });
  }
  // From the toe the face runs inward from the outer face and the end; square to it lies the way in.
  const end = normal(cut.surface);
  const outer = normal(mitre.outer);
  const [c, s] = [cosine(mitre.angle ?? SQUARE_MITRE).value, sine(mitre.angle ?? SQUARE_MITRE).value];
  const along = negate(add(scaled(end, s), scaled(outer, c)));
  const into = add(scaled(outer, s), scaled(end, -c));
  return place(shapeOf(cut), { origin: add(at, scaled(along, mitre.fromToe)), u, v: along, w: into });
}

/** The box around a cut; a slot's must be square to its surface. */
export function boundsOf(cut: OpeningCut | RecessCut, shift: Vector = [0, 0, 0]): Bounds {
  if (isRecess(cut)) return { lo: add(vector(cut.box.lo), shift), hi: add(vector(cut.box.hi), shift) };
  if (cut.turn) return openingSolid(cut, undefined, shift);
  const out = normal(cut.surface);
  const run = UNIT[cut.run];
  const lo: [number, number, number] = [0, 0, 0];
  const hi: [number, number, number] = [0, 0, 0];
  for (const i of [0, 1, 2] as const) {
    const at = cut.centre[AXES[i] as Axis].toNumber() + shift[i];
    const half = out[i] !== 0 ? 0 : run[i] !== 0 ? cut.length.value / 2 : cut.width.toNumber() / 2;
    lo[i] = out[i] > 0 ? at - cut.depth.toNumber() : at - half;
    hi[i] = out[i] < 0 ? at + cut.depth.toNumber() : at + half;
  }
  return { lo, hi };
}

function shapeOf(cut: OpeningCut): Shape {
  const depth = cut.depth.toNumber();
  const width = cut.width.toNumber();
  if (cut.kind === 'disc') return discShape(cut.diameter.toNumber(), width, depth);
  if (cut.kind === 'hole') return holeShape(cut.diameter.toNumber(), depth);
  return mortiseShape(cut.length.value, width, depth);
}
