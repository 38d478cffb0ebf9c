import type { FittedJoint } from '../../fit/fit.js';
import type { Bounded } from '../../number/bounded.js';
import type { Rational } from '../../number/rational.js';
import type { Side } from '../../spec/sides.js';
import { gapAt, type JointError, sidesAt } from '../../tolerance/joint-errors.js';
import { exceedsIn, furthestIn } from '../../tolerance/judge.js';
import type { Contribution } from '../../tolerance/stack.js';
import { rankedIn, type Tried } from '../../tolerance/tried.js';
import type { CheckContext } from '../check.js';
import { alike } from './alike.js';
import { asMade, reckoningOf } from './as-made.js';
import { perContext } from './remember.js';

/** Something at a joint that may come further off than is let pass. */
export interface TooFarOff {
  readonly joint: FittedJoint;
  readonly side: Side;
  readonly amount: Bounded;
  readonly adds: Tried;
  readonly ranked: readonly Contribution[];
}

const sides = perContext((context) => {
  const made = asMade(context);
  return made.joints.map((joint) => ({ joint, errors: sidesAt(made, joint) }));
});

/** Without tolerances of the shop no part is off in length, and no end out of square. */
const gaps = perContext((context) => {
  const stated = context.spec.shop.tolerances !== undefined || context.spec.inputs.some(({ tolerance }) => tolerance);
  if (!stated) return [];
  const made = asMade(context);
  return made.joints.map((joint) => ({ joint, errors: gapAt(made, joint) }));
});

/** What of a kind is too far off, what a statement does alike together. */
export function tooFarOff(
  context: CheckContext,
  kind: JointError['kind'],
  limit: Rational,
): readonly (readonly [TooFarOff, ...TooFarOff[]])[] {
  const reckoning = reckoningOf(context);
  const found = (kind === 'gap' ? gaps(context) : sides(context)).flatMap(({ joint, errors }) =>
    errors
      .filter((error) => error.kind === kind && exceedsIn(error.adds, limit, reckoning))
      .map(({ side, adds }) => ({
        joint,
        side,
        adds,
        amount: furthestIn(adds, reckoning),
        ranked: rankedIn(adds),
      })),
  );
  return alike(found, ({ joint, side, amount, ranked }) => [
    joint.statement,
    kind === 'gap' ? '' : side,
    amount.value.toFixed(4),
    ranked[0]?.of.origin,
  ]);
}
