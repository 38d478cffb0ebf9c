import type { FittedPart, Half } from '../../fit/fit.js';
import { say, type Text } from '../../fit/text.js';
import {
  boundsOf,
  isOpening,
  isRecess,
  type OnMitre,
  type OpeningCut,
  openingSolid,
  type RecessCut,
  recessSolid,
} from '../../geometry/cut-solid.js';
import type { Bounds, Solid } from '../../geometry/solid.js';
import { normal, type Vector } from '../../geometry/vector.js';
import { fromToe } from '../../joints/half.js';
import { highSide, type Side, thicknessAxis } from '../../spec/sides.js';
import type { Source } from '../../spec/source.js';
import type { CheckContext } from '../check.js';
import { partNames } from './names.js';
import { smallest } from './sheet.js';

/** A cut as a body in space, where it lies in the thinnest sheet the part may be made of. */
export interface Body {
  readonly part: FittedPart;
  /** The box around it; worked out for every cut, and the body itself only where boxes come near each other. */
  readonly bounds: Bounds;
  readonly solid: () => Solid;
  readonly name: () => Text;
  readonly kind: (OpeningCut | RecessCut)['kind'];
  readonly surface: Side;
  /** A slot, mortise or hole, as against a groove, rebate, housing or notch. */
  readonly opening: boolean;
  /** What it belongs to: the slots of one half of a joint are one row. */
  readonly row: string;
  /** Its slot, or its row where it is none. */
  readonly id: string;
  readonly slot?: string | undefined;
  readonly joint?: string | undefined;
  readonly statement?: string | undefined;
  readonly source: Source;
}

const STILL: Vector = [0, 0, 0];

/** Every cut of a part but its bevels, in the order of its cuts; none where it has a single one. */
export function bodiesOf(context: CheckContext, part: FittedPart): readonly Body[] {
  if (part.cuts.length < 2) return [];
  const thick = thicknessAxis(part.attitude);
  const thin = smallest(context, part, thick);
  const less = thin ? (part.extent[thick]?.sub(thin).toNumber() ?? 0) : 0;
  const top = highSide(thick);
  const into = normal(top);
  // The low face is held still: what is measured from the high face comes nearer by what the sheet is thinner.
  const nearer: Vector = [-into[0] * less, -into[1] * less, -into[2] * less];
  const shift = (from: Side): Vector => (from === top ? nearer : STILL);
  const bodies: Body[] = [];
  for (const cut of part.cuts) {
    if (isRecess(cut)) bodies.push(recessBody(context, part, cut, shift(cut.surface)));
    if (!isOpening(cut)) continue;
    const joint = context.joint(cut.joint);
    const half = joint?.halves.find((h) => h.part === part.id);
    if (!joint || !half) continue;
    const mitred = half.role === 'mitre';
    const outer = part.id === joint.entering ? joint.hostSide : joint.enteringSide;
    const mitre = mitred && thin ? { outer, fromToe: fromToe(half, thin).value } : undefined;
    const held = mitred ? outer : half.role === 'edge' ? half.from.side : cut.surface;
    const other = part.id === joint.entering ? joint.host : joint.entering;
    bodies.push(openingBody(part, cut, half, { mitre, shift: shift(held), other, statement: joint.statement }));
  }
  return bodies;
}

function openingBody(
  part: FittedPart,
  cut: OpeningCut,
  half: Half,
  at: {
    readonly mitre: OnMitre | undefined;
    readonly shift: Vector;
    readonly other: string;
    readonly statement: string;
  },
): Body {
  const { mitre, shift, other, statement } = at;
  return {
    part,
    bounds: mitre ? openingSolid(cut, mitre, shift) : boundsOf(cut, shift),
    solid: () => openingSolid(cut, mitre, shift),
    name: () => openingName(cut, half, other),
    kind: cut.kind,
    surface: cut.surface,
    opening: true,
    row: cut.joint,
    id: cut.slot,
    slot: cut.slot,
    joint: cut.joint,
    statement,
    source: cut.source,
  };
}

function openingName(cut: OpeningCut, half: Half, other: string): Text {
  const slot = half.slots.find(({ id }) => id === cut.slot);
  const word = cut.kind === 'disc' ? 'slot' : cut.kind;
  return slot ? say`the ${word} for ${other} ${slot.fromDatum} from the ${half.datum}` : say`a ${word} for ${other}`;
}

function recessBody(context: CheckContext, part: FittedPart, cut: RecessCut, shift: Vector): Body {
  const row = `${cut.kind} ${cut.joint ?? ''} ${cut.surface}`;
  return {
    part,
    bounds: boundsOf(cut, shift),
    solid: () => recessSolid(cut, shift),
    name: () => recessName(context, cut),
    kind: cut.kind,
    surface: cut.surface,
    opening: false,
    row,
    id: row,
    statement: cut.joint,
    source: cut.source,
  };
}

function recessName(context: CheckContext, cut: RecessCut): Text {
  const joint = cut.joint === undefined ? undefined : context.statement(cut.joint);
  return joint?.kind === 'joint'
    ? say`the ${cut.kind} for ${partNames(context, joint.entering)}`
    : say`its ${cut.kind} at the ${cut.surface}`;
}
