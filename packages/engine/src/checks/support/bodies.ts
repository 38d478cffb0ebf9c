import type { FittedPart, Half } from '../../fit/fit.js';
import { say, type Text } from '../../fit/text.js';
import {
  isOpening,
  isRecess,
  type OpeningCut,
  openingSolid,
  type RecessCut,
  recessSolid,
} from '../../geometry/cut-solid.js';
import type { Solid } from '../../geometry/solid.js';
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
  readonly solid: Solid;
  readonly kind: (OpeningCut | RecessCut)['kind'];
  readonly surface: Side;
  /** A slot, mortise or hole, as against a groove, rebate, housing or notch. */
  readonly opening: boolean;
  /** What it belongs to: the slots of one half of a joint are one row. */
  readonly row: string;
  readonly name: Text;
  readonly slot?: string | undefined;
  readonly joint?: string | undefined;
  readonly statement?: string | undefined;
  readonly source: Source;
}

/** Every cut of a part but its bevels, in the order of its cuts; none where it has a single one. */
export function bodiesOf(context: CheckContext, part: FittedPart): readonly Body[] {
  if (part.cuts.length < 2) return [];
  const thick = thicknessAxis(part.attitude);
  const thin = smallest(context, part, thick);
  const less = thin ? (part.extent[thick]?.sub(thin).toNumber() ?? 0) : 0;
  const top = highSide(thick);
  const into = normal(top);
  // The low face is held still: what is measured from the high face comes nearer by what the sheet is thinner.
  const shift = (from: Side | undefined): Vector =>
    from === top ? [-into[0] * less, -into[1] * less, -into[2] * less] : [0, 0, 0];
  return part.cuts.flatMap((cut, i): Body[] => {
    if (isRecess(cut)) return [recessBody(context, part, cut, i, recessSolid(cut, shift(cut.surface)))];
    if (!isOpening(cut)) return [];
    const joint = context.joint(cut.joint);
    const half = joint?.halves.find((h) => h.part === part.id);
    if (!joint || !half) return [];
    const mitred = half.role === 'mitre';
    const outer = part.id === joint.entering ? joint.hostSide : joint.enteringSide;
    const held = mitred ? outer : half.role === 'edge' ? half.from.side : cut.surface;
    const mitre = mitred && thin ? { outer, fromToe: fromToe(half, thin).value } : undefined;
    return [
      {
        part,
        solid: openingSolid(cut, mitre, shift(held)),
        kind: cut.kind,
        surface: cut.surface,
        opening: true,
        row: cut.joint,
        name: openingName(cut, half, part.id === joint.entering ? joint.host : joint.entering),
        slot: cut.slot,
        joint: cut.joint,
        statement: joint.statement,
        source: cut.source,
      },
    ];
  });
}

function openingName(cut: OpeningCut, half: Half, other: string): Text {
  const slot = half.slots.find(({ id }) => id === cut.slot);
  const word = cut.kind === 'disc' ? 'slot' : cut.kind;
  return slot ? say`the ${word} for ${other} ${slot.fromDatum} from the ${half.datum}` : say`a ${word} for ${other}`;
}

function recessBody(context: CheckContext, part: FittedPart, cut: RecessCut, number: number, solid: Solid): Body {
  const joint = cut.joint === undefined ? undefined : context.statement(cut.joint);
  const name: Text =
    joint?.kind === 'joint'
      ? say`the ${cut.kind} for ${partNames(context, joint.entering)}`
      : say`its ${cut.kind} at the ${cut.surface}`;
  return {
    part,
    solid,
    kind: cut.kind,
    surface: cut.surface,
    opening: false,
    row: `${cut.kind} ${number}`,
    name,
    statement: cut.joint,
    source: cut.source,
  };
}
