import type { FittedJoint, Half, Spacer } from '../../fit/fit.js';
import { Bench } from '../../joints/bench.js';
import { inward } from '../../joints/datum.js';
import { Rational } from '../../number/rational.js';
import { hostsOf } from '../../sizes/hosts.js';
import { opposite, outward, type Side } from '../../spec/sides.js';
import type { PartId } from '../../spec/spec.js';
import type { CheckContext } from '../check.js';
import { perContext } from './remember.js';

/** Halves of one statement that lie equally far in from zero: one spacer serves them all. */
export interface Setback {
  readonly joint: FittedJoint;
  readonly half: Half;
  readonly by: Rational;
  readonly spacer: Spacer;
  readonly parts: readonly PartId[];
}

/** Every setback that something is milled with, in the order of the joints. */
export const setbacks = perContext((context): readonly Setback[] => {
  const found = new Map<string, Setback & { readonly parts: PartId[] }>();
  for (const joint of context.fit.joints) {
    for (const half of joint.halves) {
      if (half.setback.sign() <= 0 || half.slots.length === 0) continue;
      const key = `${joint.statement}\n${half.datum}\n${half.setback}`;
      const known = found.get(key);
      if (!known) found.set(key, { joint, half, by: half.setback, spacer: half.spacer, parts: [half.part] });
      else if (!known.parts.includes(half.part)) known.parts.push(half.part);
    }
  }
  return [...found.values()];
});

/** How far the part would lie in from zero if the joint were measured from `side`, mm. */
export function setbackFrom(context: CheckContext, statement: string, part: PartId, side: Side): Rational | undefined {
  const joint = context.statement(statement);
  if (joint?.kind !== 'joint') return undefined;
  const bench = new Bench(context.solved);
  const sign = Rational.of(outward(side));
  const edges = [...hostsOf(joint), ...joint.entering].map((id) => bench.at(id, side)?.mul(sign));
  const own = bench.at(part, side);
  const [first, ...rest] = edges.filter((edge) => edge !== undefined);
  return own && first && inward(side, Rational.max(first, ...rest).mul(sign), own);
}

/** Wider than this a spacer is a board: no source, common practice. */
const WIDEST = Rational.of(100);

/**
 * The setback from the other side, where a spacer is wider than 100 mm or than half the contact and the other
 * side would need less than half of it; undefined where the datum is well chosen.
 */
export function betterDatum(
  context: CheckContext,
  setback: Setback,
): { readonly side: Side; readonly by: Rational } | undefined {
  const { joint, half, by } = setback;
  if (!joint.contact || half.spacer.kind === 'mark out') return undefined;
  const most = Rational.min(joint.contact.hi.sub(joint.contact.lo).div(Rational.TWO), WIDEST);
  if (by.le(most)) return undefined;
  const side = opposite(half.datum);
  const other = setbackFrom(context, joint.statement, half.part, side);
  return other && other.sign() >= 0 && other.mul(Rational.TWO).lt(by) ? { side, by: other } : undefined;
}
