import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { opposite } from '../spec/sides.js';
import type { Check, CheckContext } from './check.js';
import { cureFor, mostly, reckonedBy, reckoningOf, surely, upwards } from './support/as-made.js';
import { sideOfHosts } from './support/hosts-side.js';
import { partNames } from './support/names.js';
import { type TooFarOff, tooFarOff } from './support/too-far-off.js';

/** Two edges meant to be one, along a joint, may come further apart than the shop lets a step be. */
export const edgesNotFlush: Check = {
  code: 'edges-not-flush',
  severity: 'warning',
  *run(context) {
    const { step } = context.spec.shop.limits;
    const by = reckonedBy(reckoningOf(context));
    for (const group of tooFarOff(context, 'flush', step)) {
      const [one] = group;
      const { joint, side, ranked, amount, adds } = one;
      const parts = [...new Set(group.map(({ joint: { entering } }) => entering))];
      const hosts = group.map(({ joint: { host } }) => host);
      const turn = sized(one) && !flushAtDatum(context, one);
      yield {
        message: say`the ${side} of ${partNames(context, parts)} may stand ${upwards(amount)} off the ${sideOfHosts(context, joint, side, hosts)}${surely(adds)}, ${by}, and ${step} is let pass${mostly(ranked)}`,
        cure: turn
          ? say`Measure from the edge that is flush: datum ${side}; the sizes of the parts then drop out there.`
          : say`${cureFor(ranked[0]?.of.origin ?? 'saw')}; or let it be (step in limits).`,
        source: joint.source,
        related: [],
        about: { parts, joint: joint.id, statement: joint.statement },
        data: { amount: upwards(amount).toString(), ...(turn && joint.datum ? { datum: joint.datum } : {}) },
      };
    }
  },
};

/** The sizes of the parts are in it: the edge lies opposite the one the slots are measured from. */
const sized = ({ joint, side }: TooFarOff): boolean => joint.datum !== undefined && side === opposite(joint.datum);

/** The datum edges are flush as well, so that measuring from the other edge would only carry the error over. */
function flushAtDatum({ joint: find }: CheckContext, { joint }: TooFarOff): boolean {
  return (find(joint.id)?.halves ?? []).every(({ setback }) => setback.equals(Rational.ZERO));
}
