import type { Cut, FittedCant, FittedJoint, FittedPart, Half } from '../fit/fit.js';
import {
  boundsOf,
  isOpening,
  isRecess,
  type OnMitre,
  type OpeningCut,
  openingSolid,
  type RecessCut,
  recessSolid,
} from '../geometry/cut-solid.js';
import type { Bounds, Solid } from '../geometry/solid.js';
import { normal, type Vector } from '../geometry/vector.js';
import { fromToe } from '../joints/half.js';
import type { Rational } from '../number/rational.js';
import { highSide, type Side, thicknessAxis } from '../spec/sides.js';
import { bevelSolid, cantSolid } from './bevel.js';

/** A corner cut off a part, told like its other cuts. */
export interface CantCut extends FittedCant {
  readonly kind: 'cant';
}

/** A cut as a body in space, where it lies in the thinnest sheet the part may be made of. */
export interface CutBody {
  readonly part: FittedPart;
  readonly cut: Cut | CantCut;
  /** The box around it; worked out for every cut, and the body itself only where boxes come near each other. */
  readonly bounds: Bounds;
  readonly solid: () => Solid;
  readonly surface: Side;
  /** A slot, mortise or hole, as against a groove, rebate, housing, notch or bevel. */
  readonly opening: boolean;
  /** What it belongs to: the slots of one half of a joint are one row. */
  readonly row: string;
  /** Its slot, or its row where it is none. */
  readonly id: string;
  /** Of an opening: its half, and the part that meets it there. */
  readonly half?: Half | undefined;
  readonly other?: string | undefined;
  readonly joint?: string | undefined;
  /** The statement that asks for it; a notch is asked for by itself. */
  readonly statement?: string | undefined;
}

const STILL: Vector = [0, 0, 0];

/**
 * The cuts of a part, all of them if none are named, in their order. `thin` is the part's thickness at the thin end of its sheet's
 * tolerance: its low face is held still, and what is measured from the high face comes nearer by what the sheet is thinner.
 */
export function cutBodies(
  part: FittedPart,
  thin: Rational | undefined,
  jointOf: (id: string) => FittedJoint | undefined,
  cuts: readonly Cut[] = part.cuts,
): readonly CutBody[] {
  const thick = thicknessAxis(part.attitude);
  const less = thin ? (part.extent[thick]?.sub(thin).toNumber() ?? 0) : 0;
  const top = highSide(thick);
  const into = normal(top);
  const nearer: Vector = less === 0 ? STILL : [-into[0] * less, -into[1] * less, -into[2] * less];
  const shift = (from: Side): Vector => (from === top ? nearer : STILL);
  const bodies: CutBody[] = [];
  for (const cut of cuts) {
    if (isRecess(cut)) bodies.push(recessBody(part, cut, shift(cut.surface)));
    else {
      const joint = jointOf(cut.joint);
      if (!joint) continue;
      if (!isOpening(cut)) {
        const solid = bevelSolid(part, cut, thin, shift(cut.outer));
        if (solid) bodies.push(bevelBody(part, cut, solid, joint));
        continue;
      }
      const half = joint.halves.find((h) => h.part === part.id);
      if (!half) continue;
      const mitre = half.mitre && thin ? { ...half.mitre, fromToe: fromToe(half, thin).value } : undefined;
      const held = half.mitre ? half.mitre.outer : half.role === 'edge' ? half.from.side : cut.surface;
      bodies.push(openingBody(part, cut, half, joint, mitre, shift(held)));
    }
  }
  const solid = part.cant && cantSolid(part, part.cant, STILL);
  if (part.cant && solid) bodies.push(cantBody(part, part.cant, solid));
  return bodies;
}

function openingBody(
  part: FittedPart,
  cut: OpeningCut,
  half: Half,
  joint: FittedJoint,
  mitre: OnMitre | undefined,
  shift: Vector,
): CutBody {
  return {
    part,
    cut,
    bounds: mitre ? openingSolid(cut, mitre, shift) : boundsOf(cut, shift),
    solid: () => openingSolid(cut, mitre, shift),
    surface: cut.surface,
    opening: true,
    row: cut.joint,
    id: cut.slot,
    half,
    other: part.id === joint.entering ? joint.host : joint.entering,
    joint: cut.joint,
    statement: joint.statement,
  };
}

function recessBody(part: FittedPart, cut: RecessCut, shift: Vector): CutBody {
  const row = `${cut.kind} ${cut.joint ?? ''} ${cut.surface}`;
  return {
    part,
    cut,
    bounds: boundsOf(cut, shift),
    solid: () => recessSolid(cut, shift),
    surface: cut.surface,
    opening: false,
    row,
    id: row,
    half: undefined,
    other: undefined,
    joint: undefined,
    statement: cut.joint,
  };
}

function bevelBody(part: FittedPart, cut: Extract<Cut, { kind: 'bevel' }>, solid: Solid, joint: FittedJoint): CutBody {
  const row = `bevel ${cut.joint}`;
  return {
    part,
    cut,
    bounds: solid,
    solid: () => solid,
    surface: cut.side,
    opening: false,
    row,
    id: row,
    half: undefined,
    other: part.id === joint.entering ? joint.host : joint.entering,
    joint: cut.joint,
    statement: joint.statement,
  };
}

function cantBody(part: FittedPart, cant: FittedCant, solid: Solid): CutBody {
  const row = `cant ${cant.corner.join(' ')}`;
  return {
    part,
    cut: { kind: 'cant', ...cant },
    bounds: solid,
    solid: () => solid,
    surface: cant.corner[0],
    opening: false,
    row,
    id: row,
    half: undefined,
    other: undefined,
    joint: undefined,
    statement: undefined,
  };
}
