import { type Stop, stopsOfJoints, type Uneven, unevenEndsOf } from '../../joints/uneven-ends.js';
import { Rational } from '../../number/rational.js';
import { opposite, outward } from '../../spec/sides.js';
import type { CheckContext } from '../check.js';
import { perContext } from './remember.js';

/** The stops that the halves milled into faces need; none where the shop's jig has no stop. */
export const stopsOf = perContext((context): readonly Stop[] =>
  context.spec.shop.jig?.stop ? stopsOfJoints(context.fit.joints) : [],
);

/** Where the stop would stand if the joint's other face were the reference, mm from the other end. */
export function fromOtherEnd(context: CheckContext, { joint, half, end }: Stop): Rational | undefined {
  const other = opposite(end);
  const edgePart = half.part === joint.host ? joint.entering : joint.host;
  const own = context.solved.at(half.part, other);
  const face = context.solved.at(edgePart, other);
  return own && face && own.sub(face).mul(Rational.of(outward(other)));
}

/** Parts whose two ends need stops further apart than the shop lets a step be. */
export const unevenEnds = perContext((context): readonly Uneven[] =>
  unevenEndsOf(stopsOf(context)).filter(({ by }) => by.gt(context.spec.shop.limits.step)),
);
