import type { FittedJoint, Half } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { opposite } from '../spec/sides.js';
import type { Machine } from '../spec/stock.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike } from './support/alike.js';

/** An edge's slots lie where the machine cannot mill them with its base on the reference face. */
export const referencesDiffer: Check = {
  code: 'references-differ',
  severity: 'error',
  *run(context) {
    const key = ({ statement, halves }: FittedJoint) => [statement, ...halves.map((half) => half.across)];
    for (const [joint] of alike(context.fit.joints, key)) {
      const { machine } = joint;
      const [entering, host] = joint.halves;
      if (!machine || !entering || !host || entering.slots.length === 0) continue;
      const apart = joint.meeting === 'edge to edge' && unequal(context, joint, machine, entering, host);
      if (apart) yield apart;
      else
        for (const half of [entering, host])
          if (half.role === 'edge' && !reaches(machine, half)) yield outOfReach(joint, half, machine);
    }
  },
};

/** A base that stands fast is used at another distance only with a packing under it, which the spec then asks for. */
const reaches = ({ base }: Machine, { across }: Half): boolean =>
  base.least.equals(base.most) || (across.ge(base.least) && across.le(base.most));

/** Edge to edge, the base stands on each part's own face: the two faces have to be one plane, or the base be set twice. */
function unequal(
  context: CheckContext,
  joint: FittedJoint,
  machine: Machine,
  entering: Half,
  host: Half,
): Found | undefined {
  const apart = host.across.sub(entering.across);
  if (apart.abs().le(context.spec.shop.limits.step)) return undefined;
  const fast = machine.base.least.equals(machine.base.most);
  if (!fast && reaches(machine, entering) && reaches(machine, host)) return undefined;
  const face = entering.from.side;
  const can = fast
    ? say`stands fast at ${machine.base.least}`
    : say`goes from ${machine.base.least} to ${machine.base.most}`;
  return {
    message: say`the ${face} faces of ${entering.part} and ${host.part} lie ${apart.abs()} apart, and the base of ${machine.name} ${can}: with the base on each part's own face the slots come ${apart.abs()} apart`,
    cure: say`Bring the two faces into one plane (flush ${face}), or measure from faces that are (reference ${opposite(face)}).`,
    source: joint.source,
    related: [],
    about: { parts: [entering.part, host.part], joint: joint.id, statement: joint.statement },
    data: { apart: apart.toString(), reference: face },
  };
}

function outOfReach(joint: FittedJoint, half: Half, { name, base }: Machine): Found {
  return {
    message: say`the slots of ${half.part} lie ${half.across} from its ${half.from.side} face, and the base of ${name} is set from ${base.least} to ${base.most}`,
    cure: say`Write a distance within that: at ${half.across.lt(base.least) ? base.least : base.most} from reference; or measure from the other face: reference ${opposite(half.from.side)}.`,
    source: joint.source,
    related: [],
    about: { parts: [half.part], joint: joint.id, statement: joint.statement },
    data: { across: half.across.toString(), reference: half.from.side },
  };
}
