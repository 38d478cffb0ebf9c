import type { FitResult, FittedJoint, FittedPart, Half } from '../fit/fit.js';
import type { Side } from '../spec/sides.js';

/** Work that is not done on the jig, and that decides what a group of slots is measured from or milled into. */
export type OtherWork =
  /** The end is sawn to its mitre. */
  | { readonly kind: 'mitre'; readonly side: Side }
  /** The corner is cut off: the slots are in the cant, or measured from it. */
  | { readonly kind: 'cant' }
  /** The recess is cut: the slots are in its floor. */
  | { readonly kind: 'recess'; readonly cut: 'groove' | 'rebate' | 'housing' }
  /** The band is on and trimmed. */
  | { readonly kind: 'band'; readonly side: Side; readonly band: string }
  /** The layers are glued up, and the part is cut from them. */
  | { readonly kind: 'layers'; readonly material: string };

/** What must be done to a piece before a group of slots is milled, and what only afterwards. */
export interface Needs {
  readonly before: readonly OtherWork[];
  readonly after: readonly OtherWork[];
}

/**
 * What a half waits for beside the saw that cuts every part, and what waits for it. Every slot is measured from sides of
 * its own part, never from what is milled into it on the jig, so that no group of slots waits for another one unless the
 * job asks for it.
 */
export function needsOf({ spec, fit }: FitResult, part: FittedPart, joint: FittedJoint, half: Half): Needs {
  const before: OtherWork[] = [];
  if ((spec.shop.materials.get(part.material)?.layers?.length ?? 0) > 0)
    before.push({ kind: 'layers', material: part.material });
  if (half.role === 'mitre') before.push({ kind: 'mitre', side: half.surface });
  if (half.turn && part.cant) before.push({ kind: 'cant' });
  const cut = part.cuts.find((one) => 'box' in one && one.kind !== 'notch' && one.joint === joint.statement);
  if (cut && 'box' in cut && cut.kind !== 'notch' && cut.surface === half.surface)
    before.push({ kind: 'recess', cut: cut.kind });
  const touched = half.turn ? [] : [half.surface, half.datum, half.from.side];
  const bands = part.bands
    .filter(({ side }) => touched.includes(side))
    .map(({ side, band }): OtherWork => ({ kind: 'band', side, band }));
  return fit.milled === 'before banding' ? { before, after: bands } : { before: [...before, ...bands], after: [] };
}

/** Two halves with one key need the same. */
export const needsKey = ({ before, after }: Needs): string => `${words(before)} / ${words(after)}`;

const words = (needs: readonly OtherWork[]): string => needs.map((need) => Object.values(need).join(' ')).join('; ');
