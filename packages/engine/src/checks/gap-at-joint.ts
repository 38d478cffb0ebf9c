import { say } from '../fit/text.js';
import { straightened } from '../tolerance/curve.js';
import { furthestOf } from '../tolerance/judge.js';
import { mitreErrors } from '../tolerance/mitre-errors.js';
import type { Check } from './check.js';
import { alike } from './support/alike.js';
import { asMade, cureFor, mostly, reckonedBy, reckoningOf, upwards } from './support/as-made.js';
import { partNames } from './support/names.js';
import { tooFarOff } from './support/too-far-off.js';

/** A joint may stand further open than the shop lets pass, or its parts be too long to go together by as much. */
export const gapAtJoint: Check = {
  code: 'gap-at-joint',
  severity: 'warning',
  *run(context) {
    const { gap } = context.spec.shop.limits;
    const by = reckonedBy(reckoningOf(context));
    for (const group of tooFarOff(context, 'gap', gap)) {
      const [{ joint, ranked, amount }] = group;
      const parts = [...new Set(group.map((one) => one.joint.entering))];
      const hosts = group.map((one) => one.joint.host);
      yield {
        message: say`the joint of ${partNames(context, parts)} with ${partNames(context, hosts)} may stand ${upwards(amount)} open, or be as much too tight, ${by}, and ${gap} is let pass${mostly(ranked)}`,
        cure: say`${cureFor(ranked[0]?.of.origin ?? 'saw')}; or let it be (gap in limits).`,
        source: joint.source,
        related: [],
        about: { parts, joint: joint.id, statement: joint.statement },
        data: { amount: upwards(amount).toString() },
      };
    }
    yield* mitres(context);
  },
};

const mitres: Check['run'] = function* (context) {
  if (context.spec.shop.tolerances?.mitre === undefined) return;
  const { gap } = context.spec.shop.limits;
  const reckoning = reckoningOf(context);
  const off = asMade(context).joints.flatMap((joint) => {
    const curve = mitreErrors(asMade(context), joint)?.opening;
    const amount = curve && furthestOf(curve, reckoning);
    return curve && amount && amount.value - amount.error > gap.toNumber() ? [{ joint, curve, amount }] : [];
  });
  for (const group of alike(off, ({ joint }) => [joint.statement])) {
    const [{ joint, curve, amount }] = group;
    const parts = [...new Set(group.map((one) => one.joint.entering))];
    const hosts = group.map((one) => one.joint.host);
    yield {
      message: say`the mitre of ${partNames(context, parts)} with ${partNames(context, hosts)} may stand ${upwards(amount)} open at its heel or toe, ${reckonedBy(reckoning)}, and ${gap} is let pass${mostly(straightened(curve).contributions)}`,
      cure: say`${cureFor('mitre')}; or let it be (gap in limits).`,
      source: joint.source,
      related: [],
      about: { parts, joint: joint.id, statement: joint.statement },
      data: { amount: upwards(amount).toString() },
    };
  }
};
