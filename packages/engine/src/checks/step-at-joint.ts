import { say } from '../fit/text.js';
import { opposite } from '../spec/sides.js';
import { straightened } from '../tolerance/curve.js';
import { furthestOf } from '../tolerance/judge.js';
import { mitreErrors } from '../tolerance/mitre-errors.js';
import type { Check } from './check.js';
import { alike } from './support/alike.js';
import { asMade, cureFor, mostly, reckonedBy, reckoningOf, surely, upwards } from './support/as-made.js';
import { sideOfHosts } from './support/hosts-side.js';
import { partNames } from './support/names.js';
import { tooFarOff } from './support/too-far-off.js';

/** Two faces meant to be one, across a joint, may come further apart than the shop lets a step be. */
export const stepAtJoint: Check = {
  code: 'step-at-joint',
  severity: 'warning',
  *run(context) {
    const { step } = context.spec.shop.limits;
    const by = reckonedBy(reckoningOf(context));
    for (const group of tooFarOff(context, 'step', step)) {
      const [{ joint, side, ranked, amount, adds }] = group;
      const parts = group.map((one) => one.joint.entering);
      const hosts = group.map((one) => one.joint.host);
      const sheet = ranked.some(({ of }) => of.origin === 'thickness');
      const reference = joint.halves.find(({ role }) => role === 'edge')?.from.side;
      const turn = sheet && reference === opposite(side);
      yield {
        message: say`the ${side} of ${partNames(context, parts)} may stand ${upwards(amount)} off the ${sideOfHosts(context, joint, side, hosts)}${surely(adds)}, ${by}, and ${step} is let pass${mostly(ranked)}`,
        cure: turn
          ? say`Measure both halves from the ${side}: reference ${side}; the thickness of the sheet then drops out there.`
          : say`${cureFor(ranked[0]?.of.origin ?? 'saw')}; or let the step be (step in limits).`,
        source: joint.source,
        related: [],
        about: { parts: [...new Set(parts)], joint: joint.id, statement: joint.statement },
        data: { amount: upwards(amount).toString(), ...(turn ? { flush: side } : {}) },
      };
    }
    yield* toes(context);
  },
};

const toes: Check['run'] = function* (context) {
  const { step } = context.spec.shop.limits;
  const reckoning = reckoningOf(context);
  const off = asMade(context).joints.flatMap((joint) => {
    if (joint.meeting !== 'mitre') return [];
    const curve = mitreErrors(asMade(context), joint)?.toes;
    const amount = curve && furthestOf(curve, reckoning);
    return curve && amount && amount.value - amount.error > step.toNumber() ? [{ joint, curve, amount }] : [];
  });
  for (const group of alike(off, ({ joint }) => [joint.statement])) {
    const [{ joint, curve, amount }] = group;
    const { contributions: ranked } = straightened(curve);
    const parts = [...new Set(group.map((one) => one.joint.entering))];
    const hosts = group.map((one) => one.joint.host);
    const heel = joint.halves[0]?.from.kind === 'heel';
    yield {
      message: say`the toes of ${partNames(context, parts)} and of ${partNames(context, hosts)} may miss each other by ${upwards(amount)} along the mitre, ${reckonedBy(reckoning)}, and ${step} is let pass${mostly(ranked)}`,
      cure: heel
        ? say`Measure both halves from the toe: reference ${opposite(joint.halves[0]?.from.side ?? 'bottom')}; the thickness of the sheets then drops out there.`
        : say`${cureFor(ranked[0]?.of.origin ?? 'line')}; or let the step be (step in limits).`,
      source: joint.source,
      related: [],
      about: { parts, joint: joint.id, statement: joint.statement },
      data: {
        amount: upwards(amount).toString(),
        ...(heel ? { flush: opposite(joint.halves[0]?.from.side ?? 'bottom') } : {}),
      },
    };
  }
};
