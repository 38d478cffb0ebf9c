import type { FittedJoint } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import type { Rational } from '../number/rational.js';
import { AXES, type Axis, highSide, lowSide } from '../spec/sides.js';
import type { Check, CheckContext } from './check.js';
import { alike, once } from './support/alike.js';
import { partNames } from './support/names.js';

/** Two parts are to be joined, but their touching sides lie beside each other. */
export const noContact: Check = {
  code: 'no-contact',
  severity: 'error',
  *run(context) {
    const apart = context.fit.joints.filter(
      (joint) =>
        joint.trouble.includes('no contact') &&
        rightWayRound(context, joint.entering) &&
        rightWayRound(context, joint.host),
    );
    for (const group of alike(apart, (joint) => [joint.statement, joint.entering])) {
      const [joint] = group;
      const hosts = once(group.map((j) => j.host));
      const part = context.part(joint.entering);
      if (!part) continue;
      yield {
        message: say`${joint.entering} is joined to ${partNames(context, hosts)}, but the ${joint.enteringSide} side of ${joint.entering} and the ${joint.hostSide} side of ${joint.host} do not touch: ${miss(context, joint)}`,
        cure: say`Place ${joint.entering} so that it meets ${partNames(context, hosts)}, or join it to the part it does meet.`,
        source: joint.source,
        related: [joint.entering, ...hosts].flatMap((id) => {
          const named = context.part(id);
          return named ? [{ message: say`${id} is declared here`, source: named.source }] : [];
        }),
        about: { parts: [joint.entering, ...hosts], joint: joint.id, statement: joint.statement },
      };
    }
  },
};

/** A part whose size comes out the wrong way round has a finding of its own. */
function rightWayRound(context: CheckContext, id: string): boolean {
  const extent = context.part(id)?.extent;
  return AXES.every((axis) => extent?.[axis]?.sign() === 1);
}

/** On which axis the two pass each other, and by how much. */
function miss({ solved }: CheckContext, { entering, host, axis }: FittedJoint): Text {
  const beyond = (low: string, high: string, on: Axis): Rational | undefined => {
    const end = solved.at(low, highSide(on));
    const start = solved.at(high, lowSide(on));
    return end && start ? start.sub(end) : undefined;
  };
  for (const on of AXES) {
    if (on === axis) continue;
    const after = beyond(host, entering, on);
    if (after && after.sign() >= 0) return say`${entering} begins ${after} beyond the ${highSide(on)} of ${host}`;
    const before = beyond(entering, host, on);
    if (before && before.sign() >= 0) return say`${entering} ends ${before} short of the ${lowSide(on)} of ${host}`;
  }
  return say`a notch takes away what they would touch with`;
}
