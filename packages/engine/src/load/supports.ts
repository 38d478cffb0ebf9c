import type { Fit, FittedPart } from '../fit/fit.js';
import type { Rational } from '../number/rational.js';
import { type Axis, axisOf, type Side, thicknessAxis } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';

/** A clear gap that a level part spans. */
export interface Gap {
  readonly axis: Axis;
  readonly length: Rational;
  /** What bears it at either end. */
  readonly between: readonly [PartId, PartId];
  /** How many gaps the part spans along this axis. */
  readonly of: number;
}

interface Support {
  readonly part: PartId;
  readonly lo: Rational;
  readonly hi: Rational;
}

/**
 * The gap that tells how much a level part sags: on each level axis along which it is borne at two places or more, the
 * longest clear gap; of the two axes the one with the shorter, since a board carries the shorter way. Borne it is by
 * upright or facing parts that stand across the span and meet it at an end or from below. A rail that runs along the
 * span stiffens it and is not reckoned.
 */
export function gapOf(fit: Fit, part: FittedPart): Gap | undefined {
  const gaps = (['x', 'y'] as const).flatMap((axis) => longest(axis, supportsOf(fit, part, axis)) ?? []);
  return gaps.reduce<Gap | undefined>((least, gap) => (!least || gap.length.lt(least.length) ? gap : least), undefined);
}

function supportsOf(fit: Fit, part: FittedPart, axis: Axis): readonly Support[] {
  const supports = new Map<PartId, Support>();
  for (const joint of fit.joints) {
    if (joint.entering !== part.id && joint.host !== part.id) continue;
    const enters = joint.entering === part.id;
    if (!bears(enters ? joint.enteringSide : joint.hostSide, axis)) continue;
    // Looked for one by one: few joints are of this part, and this is asked of one part after the other.
    const id = enters ? joint.host : joint.entering;
    const other = supports.has(id) ? undefined : fit.parts.find((one) => one.id === id);
    if (!other?.box || thicknessAxis(other.attitude) !== axis) continue;
    supports.set(other.id, { part: other.id, lo: other.box.lo[axis], hi: other.box.hi[axis] });
  }
  return [...supports.values()].sort((a, b) => a.lo.compare(b.lo));
}

/** Whether a part is borne at this side of it: at an end of the span, or from below. */
const bears = (side: Side, axis: Axis): boolean => side === 'bottom' || axisOf(side) === axis;

function longest(axis: Axis, supports: readonly Support[]): Gap | undefined {
  let gap: Gap | undefined;
  for (const [i, high] of supports.entries()) {
    const low = supports[i - 1];
    if (!low) continue;
    const length = high.lo.sub(low.hi);
    if (length.sign() <= 0 || (gap && length.le(gap.length))) continue;
    gap = { axis, length, between: [low.part, high.part], of: supports.length - 1 };
  }
  return gap;
}
