import type { FittedJoint, Half } from '../../fit/fit.js';
import { Rational } from '../../number/rational.js';
import { opposite, outward, type Side } from '../../spec/sides.js';
import type { CheckContext } from '../check.js';
import { perContext } from './remember.js';

/** A stop that a milled half needs, on the host that an entering part meets. */
export interface Stop {
  readonly joint: FittedJoint;
  readonly half: Half;
  readonly end: Side;
  /** From the end to the reference plane, mm. */
  readonly at: Rational;
}

/** The stops that the halves milled into faces need; none where the shop's jig has no stop. */
export const stopsOf = perContext((context): readonly Stop[] => {
  if (!context.spec.shop.jig?.stop) return [];
  return context.fit.joints.flatMap((joint) =>
    joint.halves.flatMap((half) =>
      half.stop && half.slots.length > 0 ? [{ joint, half, end: half.stop.end, at: half.stop.at }] : [],
    ),
  );
});

/** Stops by what they have in common, in the order of the joints. */
export function stopsBy(stops: readonly Stop[], key: (stop: Stop) => string): readonly (readonly [Stop, ...Stop[]])[] {
  const groups = new Map<string, [Stop, ...Stop[]]>();
  for (const stop of stops) {
    const group = groups.get(key(stop));
    if (group) group.push(stop);
    else groups.set(key(stop), [stop]);
  }
  return [...groups.values()];
}

/** Where the stop would stand if the joint's other face were the reference, mm from the other end. */
export function fromOtherEnd(context: CheckContext, { joint, half, end }: Stop): Rational | undefined {
  const other = opposite(end);
  const edgePart = half.part === joint.host ? joint.entering : joint.host;
  const own = context.solved.at(half.part, other);
  const face = context.solved.at(edgePart, other);
  return own && face && own.sub(face).mul(Rational.of(outward(other)));
}

/** Two ends of one part that need stops further apart than the shop lets a step be. */
export interface Uneven {
  readonly more: Stop;
  readonly less: Stop;
  readonly by: Rational;
}

/** Parts whose two ends need different stops: both ends in hosts' faces, one opposite the other. */
export const unevenEnds = perContext((context): readonly Uneven[] => {
  const hosts = stopsOf(context).filter(({ joint, half }) => half.part === joint.host);
  const { step } = context.spec.shop.limits;
  return stopsBy(hosts, ({ joint }) => `${joint.statement}\n${joint.entering}\n${joint.axis}`).flatMap((ends) => {
    const [first, ...rest] = ends;
    const second = rest.find((stop) => stop.joint.enteringSide === opposite(first.joint.enteringSide));
    if (!second || second.end !== first.end) return [];
    const [more, less] = first.at.ge(second.at) ? [first, second] : [second, first];
    const by = more.at.sub(less.at);
    return by.gt(step) ? [{ more, less, by }] : [];
  });
});
