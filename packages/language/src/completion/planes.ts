import {
  type Axis,
  axisOf,
  axisOfDimension,
  type Dimension,
  highSide,
  lowSide,
  opposite,
  SIDES,
  type Side,
} from '@dryfit/engine';
import { RANK } from './offer.js';
import type { SideOffer } from './sides.js';
import type { Situation } from './situation.js';
import { type Standing, thicknessOf } from './standing.js';

/** A plane as far as it is written: its part, and whether it is a wall of that part's groove or notch. */
interface Begun {
  readonly part: Standing | undefined;
  readonly of?: 'groove' | 'notch' | undefined;
  /** What stands before it. */
  readonly before: string;
}

/** What the words before a plane want of it. */
interface Wanted {
  readonly axes?: readonly Axis[] | undefined;
  /** The only side that does. */
  readonly side?: Side | undefined;
  readonly unfit?: { readonly axis: Axis; readonly why: string } | undefined;
}

/** The sides that can follow a part and its dot. */
export function planeSides(situation: Situation): readonly SideOffer[] {
  const begun = begunPlane(situation);
  const wanted = begun && wantedOf(begun, situation);
  if (begun === undefined || wanted === undefined) return SIDES.map((side) => ({ side }));
  return SIDES.filter((side) => exists(side, begun) && suits(side, wanted)).map((side) => {
    const unfit = wanted.unfit?.axis === axisOf(side);
    return { side, rank: unfit ? RANK.unfit : RANK.fits, detail: unfit ? wanted.unfit?.why : undefined };
  });
}

/** True where a wall of this kind can follow a part and its dot. */
export function hasWall(of: 'groove' | 'notch', situation: Situation): boolean {
  const begun = begunPlane(situation);
  const wanted = begun && wantedOf(begun, situation);
  return SIDES.some((side) => begun !== undefined && exists(side, { ...begun, of }) && suits(side, wanted ?? {}));
}

/** True where the cant of the part before the dot can follow: it has one, and a turned part is joined to it. */
export function hasCant(situation: Situation): boolean {
  const { head, parts } = situation;
  const entering = parts.get(head?.entering[0]?.name ?? '');
  const turned = entering === undefined || entering.turned;
  return (begunPlane(situation)?.part?.canted ?? true) && turned;
}

function begunPlane({ tail, parts }: Situation): Begun | undefined {
  const match = /^(.*?)(?:^| )(\S+)(?: \d+)? \.(?: (groove|notch) \.)?$/.exec(tail);
  if (!match) return undefined;
  const [, before = '', name = '', of] = match;
  return { part: parts.get(name), of: of as Begun['of'], before };
}

function exists(side: Side, { part, of }: Begun): boolean {
  if (of === undefined || part === undefined) return true;
  if (of === 'groove') return part.grooved && axisOf(side) === thicknessOf(part);
  // A wall that two notches have is no plane that could be meant.
  return part.notched.filter((one) => one === side).length === 1;
}

const suits = (side: Side, { axes, side: only }: Wanted): boolean =>
  only === undefined ? (axes?.includes(axisOf(side)) ?? true) : side === only;

const TOWARD: readonly (readonly [RegExp, Axis])[] = [
  [/ (above|below)$/, 'z'],
  [/ (in front of|behind)$/, 'y'],
  [/ (left of|right of)$/, 'x'],
];

function wantedOf({ before, part }: Begun, situation: Situation): Wanted {
  const { head, parts, axes, inJoint } = situation;
  const placed =
    /(?:^| )(left|right|front|rear|bottom|top) (?:(against)|(flush with)|(?:set back|proud) .*?(?:from|of))$/.exec(
      before,
    );
  if (placed) {
    const side = placed[1] as Side;
    if (placed[2]) return { side: opposite(side) };
    return placed[3] ? { side } : { axes: [axisOf(side)] };
  }
  for (const [words, axis] of TOWARD) if (words.test(before)) return { axes: [axis] };
  const entering = parts.get(head?.entering[0]?.name ?? '');
  const own = entering && thicknessOf(entering);
  const opening = /(?:^| )openings equal .*?between(?: \S+(?: \d+)? \.(?: \S+ \.)? (\S+) and)?$/.exec(before);
  if (opening) return { axes: opening[1] ? [axisOf(opening[1] as Side)] : own && [own] };
  if (/(^| )datum$/.test(before)) return { axes: axes?.run };
  const dimension = /^(width|depth|height) .*(from|to)$/.exec(before);
  if (dimension) return { axes: [axisOfDimension(dimension[1] as Dimension)] };
  if (head === undefined || inJoint) return {};
  if (own && / (to|,)$/.test(before) && head.pairs.length === 0)
    return { unfit: { axis: own, why: `a face of ${entering?.name} would meet it` } };
  // Edge to edge the host names the edge that is met: not one of its faces.
  const thick = part && thicknessOf(part);
  return { unfit: thick && { axis: thick, why: `a face of ${part?.name}, which needs no naming` } };
}

/** The two sides across an axis. */
export const sidesAcross = (axis: Axis): readonly Side[] => [lowSide(axis), highSide(axis)];
