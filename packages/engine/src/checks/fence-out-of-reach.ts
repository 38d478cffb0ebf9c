import type { FittedJoint, Half, Slot } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { opposite } from '../spec/sides.js';
import type { Machine } from '../spec/stock.js';
import type { Check, Found } from './check.js';

/** A line lies nearer to the fence than half the machine's body, or further from it than the jig reaches. */
export const fenceOutOfReach: Check = {
  code: 'fence-out-of-reach',
  severity: 'error',
  *run({ fit, spec }) {
    const { jig } = spec.shop;
    if (!jig || jig.fences.length === 0) return;
    const reach = jig.reach ?? jig.bed;
    const told = new Set<string>();
    for (const joint of fit.joints) {
      const [half] = joint.halves;
      if (!half || !joint.machine) continue;
      const near = nearest(joint.machine);
      for (const slot of half.slots) {
        if (!near?.gt(slot.fromZero) && !reach?.lt(slot.fromZero)) continue;
        const key = `${joint.statement}\n${half.datum}\n${slot.fromZero}`;
        if (told.has(key)) continue;
        told.add(key);
        if (near && slot.fromZero.lt(near)) {
          yield found(
            joint,
            half,
            slot,
            say`the line ${slot.fromZero} is too near the fence: the body of ${joint.machine.name} is ${joint.machine.body ?? near} wide, so its middle comes no nearer than ${near}`,
            say`Move the line to ${near} or more, leave it out here (leave out ${slot.fromZero}), or measure from the other side: datum ${opposite(half.datum)}.`,
          );
        } else if (reach && slot.fromZero.gt(reach)) {
          yield found(
            joint,
            half,
            slot,
            say`the line ${slot.fromZero} is too far from the fence: ${jig.name} reaches ${reach}`,
            say`Move the line to ${reach} or less, leave it out here (leave out ${slot.fromZero}), or measure from the other side: datum ${opposite(half.datum)}.`,
          );
        }
      }
    }
  },
};

/** The least distance of a machine's middle from a fence it stands against. */
const nearest = ({ body }: Machine): Rational | undefined => body?.div(Rational.TWO);

const found = (joint: FittedJoint, half: Half, slot: Slot, message: Text, cure: Text): Found => ({
  message,
  cure,
  source: joint.source,
  related: [],
  about: { parts: [joint.entering, joint.host], joint: joint.id, slots: [slot.id], statement: joint.statement },
  data: { line: slot.fromZero.toString(), datum: half.datum },
});
