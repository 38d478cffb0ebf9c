import { say } from '../fit/text.js';
import { opposite } from '../spec/sides.js';
import type { Check } from './check.js';
import { partNames } from './support/names.js';
import { betterDatum, setbackFrom, setbacks } from './support/setbacks.js';

/** A part is set back from the datum, and the jig has no spacer and the joint cuts none. */
export const shelfNeedsSpacer: Check = {
  code: 'shelf-needs-spacer',
  severity: 'error',
  *run(context) {
    const jig = context.spec.shop.jig;
    for (const setback of setbacks(context)) {
      const { joint, half, by, parts, spacer } = setback;
      if (!jig || spacer.kind !== 'missing' || jig.spacers.length > 0 || betterDatum(context, setback)) continue;
      const other = opposite(half.datum);
      const there = setbackFrom(context, joint.statement, half.part, other);
      const turn = there?.isZero()
        ? say`, or measure from the other side, where nothing is set back: datum ${other}`
        : [];
      yield {
        message: say`the setback of ${partNames(context, parts)} from the ${half.datum} is ${by}, and ${jig.name} has no spacers: straight against the fence the slots would come ${by} too far from the ${half.datum}`,
        cure: say`Write "spacer cut" in this joint for a block ${by} wide, or give ${jig.name} spacers that make up ${by}${turn}.`,
        source: joint.source,
        related: [{ message: say`${jig.name} has no spacers`, source: jig.source }],
        about: { parts, joint: joint.id, slots: half.slots.map((slot) => slot.id), statement: joint.statement },
        data: { setback: by.toString(), datum: half.datum },
      };
    }
  },
};
