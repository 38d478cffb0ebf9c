import { say } from '../fit/text.js';
import { highSide, lowSide, thirdAxis } from '../spec/sides.js';
import type { Check } from './check.js';
import { aboutTrouble, troubled } from './support/trouble.js';

/** The reference written is an edge of the part, and slots are measured from one of its faces. */
export const referenceNotAFace: Check = {
  code: 'reference-not-a-face',
  severity: 'error',
  *run(context) {
    for (const found of troubled(context, 'reference not a face')) {
      const { joint, written } = found;
      const across = joint.run && thirdAxis(joint.axis, joint.run);
      if (!across || !written.reference) continue;
      const [low, high] = [lowSide(across), highSide(across)];
      yield {
        message: say`the ${written.reference.side} is no face of the part whose edge is milled here: its faces are ${low} and ${high}, and only they can lie on the base of the machine`,
        cure: say`Write reference ${low} or reference ${high}.`,
        source: written.reference.source,
        related: [],
        about: aboutTrouble(found),
        data: { sides: [low, high] },
      };
    }
  },
};
