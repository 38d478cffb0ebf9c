import { type Axis, axisOf, opposite, SIDES, type Side } from '@dryfit/engine';
import { isSide } from './head.js';
import { type Offer, RANK } from './offer.js';
import { planeSides } from './planes.js';
import type { Situation } from './situation.js';
import { thicknessOf } from './standing.js';

/** The sides that can be named where a side is wanted, the likeliest first. */
export function sideOffers(situation: Situation, document: (side: Side) => string | undefined): Offer[] {
  return fitting(situation).map(({ side, rank = RANK.fits, detail }) => ({
    label: side,
    kind: 'side',
    rank,
    detail,
    documentation: document(side),
  }));
}

/** A side, and how well it fits. */
export interface SideOffer {
  readonly side: Side;
  readonly rank?: number | undefined;
  readonly detail?: string | undefined;
}

function fitting(situation: Situation): readonly SideOffer[] {
  const { tail, begun, axes } = situation;
  if (begun.at(-1) === '.') return planeSides(situation);
  if (/(^| )datum$/.test(tail)) return on(axes?.run);
  if (/(^| )outer$/.test(tail)) return on(thicknessOfEntering(situation));
  const list = /(?:^| )(flush|band) ((?:(?:left|right|front|rear|bottom|top) , )*)$/.exec(`${tail} `);
  if (list?.[1] === 'flush') return flushSides(situation, list[2]?.split(' ').filter(isSide) ?? []);
  if (list?.[1] === 'band')
    return SIDES.filter((side) => !list[2]?.split(' ').includes(side)).map((side) => ({ side }));
  const corner = /(?:^| )at(?: (left|right|front|rear|bottom|top))?$/.exec(tail);
  if (corner && ['notch', 'cant'].includes(situation.begun[0] ?? ''))
    return cornerSides(situation, corner[1] as Side | undefined);
  if (situation.inJoint) return placedSides(situation);
  return SIDES.map((side) => ({ side }));
}

const ALL: readonly Axis[] = ['x', 'y', 'z'];

function on(axes: readonly Axis[] | undefined): readonly SideOffer[] {
  const wanted = axes === undefined || axes.length === 0 ? ALL : axes;
  return SIDES.filter((side) => wanted.includes(axisOf(side))).map((side) => ({ side }));
}

function thicknessOfEntering({ head, parts }: Situation): readonly Axis[] {
  const standing = parts.get(head?.entering[0]?.name ?? '');
  const axis = standing && thicknessOf(standing);
  return axis ? [axis] : [];
}

/** Sides whose place a fact of the joint has told. */
const told = (situation: Situation): readonly Side[] =>
  situation.facts.flatMap((fact) => {
    if (fact.$type === 'FlushFact') return fact.sides;
    return fact.$type === 'SideFact' && fact.side ? [fact.side] : [];
  });

/** Not across the contact, where the part ends anyway, nor what is said already. */
function flushSides(situation: Situation, list: readonly Side[]): readonly SideOffer[] {
  const said = [...told(situation), ...list];
  const thick = thicknessOfEntering(situation);
  return SIDES.filter((side) => {
    if (said.includes(side) || situation.axes?.contact.includes(axisOf(side))) return false;
    return !(thick.includes(axisOf(side)) && said.includes(opposite(side)));
  }).map((side) => ({ side }));
}

/** Sides that a fact may place: those that neither a fact nor the joint itself has placed. */
function placedSides(situation: Situation): readonly SideOffer[] {
  const placed = [...told(situation), ...(situation.axes?.ends ?? [])];
  return SIDES.filter((side) => !placed.includes(side)).map((side) => ({ side, rank: RANK.also }));
}

/** Two sides that meet, across the thickness last. */
function cornerSides({ begun, parts }: Situation, first: Side | undefined): readonly SideOffer[] {
  const standing = parts.get(begun[1] ?? '');
  const thick = standing && thicknessOf(standing);
  return SIDES.filter((side) => first === undefined || axisOf(side) !== axisOf(first)).map((side) => ({
    side,
    rank: axisOf(side) === thick ? RANK.unfit : RANK.fits,
    detail: axisOf(side) === thick ? `a face of ${standing?.name}` : undefined,
  }));
}
