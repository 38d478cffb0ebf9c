import { say } from '../fit/text.js';
import type { Check } from './check.js';
import { aboutTrouble, meets, troubled } from './support/trouble.js';

/** Connectors are asked for where two parts lie face to face, and there is no edge to mill. */
export const facesMeet: Check = {
  code: 'faces-meet',
  severity: 'error',
  *run(context) {
    for (const found of troubled(context, 'faces meet')) {
      const { joint } = found;
      yield {
        message: say`${meets(context, found)} face to face, so there is no edge that ${joint.connector?.name ?? 'a connector'} could be milled into and no line to string it along`,
        cure: say`Say how the faces are held: connect none "glued", or let the ${joint.enteringSide} edge of another part meet the face.`,
        source: joint.source,
        related: [],
        about: aboutTrouble(found),
      };
    }
  },
};
