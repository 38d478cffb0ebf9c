import { say } from '../fit/text.js';
import { fixedAlong } from '../sizes/fixed.js';
import { highSide, lowSide, thirdAxis } from '../spec/sides.js';
import type { Check } from './check.js';
import { aboutTrouble, meets, troubled } from './support/trouble.js';

/** Nothing says which face the slots are measured from across the joint. */
export const referenceMissing: Check = {
  code: 'reference-missing',
  severity: 'error',
  *run(context) {
    for (const found of troubled(context, 'reference missing')) {
      const { joint, written } = found;
      const across = joint.run && thirdAxis(joint.axis, joint.run);
      const common = { source: joint.source, related: [], about: aboutTrouble(found) };
      if (joint.verb === 'mitre' && !written.outer) {
        yield {
          ...common,
          message: say`${meets(context, found)} in a mitre, and nothing says which is its outer side: the slots are measured from the outer corner`,
          cure: say`Name the outer side, as in: outer top.`,
        };
        continue;
      }
      if (!across) continue;
      const [low, high] = [lowSide(across), highSide(across)];
      const both = fixedAlong(written.facts, across).length > 1;
      yield {
        ...common,
        message: both
          ? say`${meets(context, found)} with both its ${low} and its ${high} face fixed: either could be the one the slots are measured from`
          : say`${meets(context, found)}, and no fact of the joint fixes its ${low} or its ${high} face: nothing says which one the slots are measured from`,
        cure: say`Name the face that lies on the base of the machine: reference ${low}, or reference ${high}.`,
        data: { sides: [low, high] },
      };
    }
  },
};
