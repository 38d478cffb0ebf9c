import { axisOf, type FittedPart, highSide, lowSide, type Rational, type Side, thicknessAxis } from '@dryfit/engine';
import {
  type CentredFact,
  type Fact,
  isCentredFact,
  isOpeningsFact,
  type Joint,
  type OpeningsFact,
  type PartRef,
  type Placing,
  type Plane,
} from '../generated/ast.js';
import { block } from '../hover/markdown.js';
import type { Fitted, Hint } from './hint.js';
import { partsOf } from './parts.js';

/** Where a fact only says that distances are equal: how large they come out. */
export function distanceHints(moved: readonly PartRef[], item: Joint | Placing, fitted: Fitted): Hint[] {
  const facts: readonly (Fact | Placing['fact'])[] = item.$type === 'Joint' ? item.facts : [item.fact];
  return facts.flatMap((fact) => {
    const end = fact?.$cstNode?.end;
    const gaps = isCentredFact(fact)
      ? centred(moved, fact, fitted)
      : isOpeningsFact(fact)
        ? openings(moved, fact, fitted)
        : undefined;
    if (end === undefined || gaps === undefined) return [];
    const why = () => block(gaps.map(({ from, to, is }) => `${from} to ${to}: ${fitted.lengths.unit(is)}`));
    return [{ offset: end, label: labelOf(gaps, fitted), why }];
  });
}

/** The clear distance between two things that face each other. */
interface Gap {
  readonly from: string;
  readonly to: string;
  readonly is: Rational;
}

/** `3 openings of 240`, or all of them where rounding leaves the last another: `240, 240, 241`. */
function labelOf(gaps: readonly Gap[], { lengths }: Fitted): string {
  const [first] = gaps;
  const alike = first !== undefined && gaps.every(({ is }) => is.equals(first.is));
  if (alike)
    return gaps.length === 2 ? `${lengths.of(first.is)} each side` : `${gaps.length} of ${lengths.of(first.is)}`;
  return gaps.map(({ is }) => lengths.of(is)).join(', ');
}

function centred(moved: readonly PartRef[], fact: CentredFact, fitted: Fitted): Gap[] | undefined {
  const [[low], [high], [part, ...others]] = [
    partsOf([fact.low], fitted),
    partsOf([fact.high], fitted),
    partsOf(moved, fitted),
  ];
  if (!low || !high || !part || others.length > 0) return undefined;
  const axis = thicknessAxis(low.attitude);
  return gapsBetween(planeOf(low, highSide(axis)), [part], planeOf(high, lowSide(axis)), axis);
}

function openings(moved: readonly PartRef[], fact: OpeningsFact, fitted: Fitted): Gap[] | undefined {
  const [low, high] = [sideOf(fact.low, fitted), sideOf(fact.high, fitted)];
  return low && high && gapsBetween(low, partsOf(moved, fitted), high, axisOf(low.side));
}

interface PlacedSide {
  readonly name: string;
  readonly side: Side;
  readonly at: Rational | undefined;
}

function gapsBetween(
  low: PlacedSide,
  parts: readonly FittedPart[],
  high: PlacedSide,
  axis: 'x' | 'y' | 'z',
): Gap[] | undefined {
  const between = parts
    .flatMap(({ id, box }) => (box ? [{ name: id, lo: box.lo[axis], hi: box.hi[axis] }] : []))
    .sort((a, b) => a.lo.compare(b.lo));
  if (low.at === undefined || high.at === undefined || between.length < parts.length) return undefined;
  const from = [{ name: low.name, hi: low.at }, ...between];
  const to = [...between, { name: high.name, lo: high.at }];
  return from.map(({ name, hi }, index) => {
    const next = to[index] as (typeof to)[number];
    return { from: name, to: next.name, is: next.lo.sub(hi) };
  });
}

/** A side of a part; walls of grooves and notches have no distance that a box tells. */
function sideOf(plane: Plane | undefined, fitted: Fitted): PlacedSide | undefined {
  const [part] = partsOf([plane?.ref], fitted);
  return part && plane?.side !== undefined && plane.of === undefined ? planeOf(part, plane.side) : undefined;
}

function planeOf({ id, box }: FittedPart, side: Side): PlacedSide {
  const axis = axisOf(side);
  return { name: `${id}.${side}`, side, at: side === lowSide(axis) ? box?.lo[axis] : box?.hi[axis] };
}
