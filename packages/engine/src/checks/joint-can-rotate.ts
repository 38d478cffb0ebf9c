import type { FittedJoint } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { AXES } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { Check, CheckContext } from './check.js';
import { alike, once } from './support/alike.js';
import { partNames } from './support/names.js';
import { spreadTooLong } from './support/spread.js';

/** A flat connector counts as enough against turning up to this many times its own length of contact. */
const REACH = Rational.of(3);

/** A joint hangs on one connector, and nothing else keeps the part from turning about it. */
export const jointCanRotate: Check = {
  code: 'joint-can-rotate',
  severity: 'warning',
  *run(context) {
    const pinned = context.fit.joints.filter((joint) => turns(context, joint));
    for (const group of alike(pinned, (joint) => [joint.statement, joint.entering])) {
      const [joint] = group;
      const { connector, contact } = joint;
      const loose = loosePart(context, joint);
      if (!connector || !contact || !loose) continue;
      const hosts = once(group.map((j) => j.host));
      const length = contact.hi.sub(contact.lo);
      yield {
        message: say`only one ${connector.name} holds ${joint.entering} to ${hosts.length > 1 ? 'each of ' : ''}${partNames(context, hosts)}, along ${length}: ${
          connector.shape === 'dowel'
            ? say`${loose} turns about it`
            : say`over so long a joint its own length of ${connector.along} does not keep ${loose} from turning`
        } until the glue is dry`,
        cure: say`Put two connectors into the joint, far apart, or hold ${loose} somewhere else as well.`,
        source: joint.source,
        related: [],
        about: {
          parts: [joint.entering, ...hosts],
          joint: joint.id,
          slots: joint.halves.flatMap((half) => half.slots.map((slot) => slot.id)),
          statement: joint.statement,
        },
      };
    }
  },
};

function turns(context: CheckContext, joint: FittedJoint): boolean {
  const { connector, contact, halves } = joint;
  if (!connector || !contact || halves.length !== 2 || halves[0]?.slots.length !== 1) return false;
  if (spreadTooLong(context, joint)) return false;
  if (connector.shape !== 'dowel' && connector.along.mul(REACH).ge(contact.hi.sub(contact.lo))) return false;
  return loosePart(context, joint) !== undefined;
}

/** The one of the two parts that nothing but this joint keeps from turning. */
const loosePart = (context: CheckContext, joint: FittedJoint): PartId | undefined =>
  [joint.entering, joint.host].find((part) => !heldElsewhere(context, joint, part));

/** Whether another joint holds the part anywhere off the line through this joint's connector. */
function heldElsewhere({ fit }: CheckContext, joint: FittedJoint, part: PartId): boolean {
  const pin = joint.halves[0]?.slots[0]?.centre;
  if (!pin) return false;
  const off = AXES.filter((axis) => axis !== joint.axis);
  return fit.joints.some((other) => {
    if (other.id === joint.id || (other.entering !== part && other.host !== part)) return false;
    if (other.without !== undefined) return true;
    if (['groove', 'house', 'rebate'].includes(other.verb)) return true;
    const slots = other.halves[0]?.slots ?? [];
    // Told in another frame, it lies at another of the part's sides.
    if (other.turn !== joint.turn) return slots.length > 0;
    return slots.some(({ centre }) => off.some((axis) => !centre[axis].equals(pin[axis])));
  });
}
