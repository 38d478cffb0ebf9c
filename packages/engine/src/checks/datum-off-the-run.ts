import { say } from '../fit/text.js';
import { highSide, lowSide } from '../spec/sides.js';
import type { Check } from './check.js';
import { aboutTrouble, troubled } from './support/trouble.js';

/** The datum written is a side that the slots run past, not one of the two they run between. */
export const datumOffTheRun: Check = {
  code: 'datum-off-the-run',
  severity: 'error',
  *run(context) {
    for (const found of troubled(context, 'datum off the run')) {
      const { joint, written } = found;
      if (!joint.run || !written.datum) continue;
      const [low, high] = [lowSide(joint.run), highSide(joint.run)];
      yield {
        message: say`the slots of this joint are strung from ${low} to ${high}, so their distances cannot be measured from the ${written.datum.side}`,
        cure: say`Write datum ${low} or datum ${high}.`,
        source: written.datum.source,
        related: [],
        about: aboutTrouble(found),
        data: { sides: [low, high] },
      };
    }
  },
};
