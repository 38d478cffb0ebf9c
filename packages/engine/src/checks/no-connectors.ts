import { say } from '../fit/text.js';
import type { Check } from './check.js';
import { aboutTrouble, meets, troubled } from './support/trouble.js';

/** A joint that needs connectors names none, and neither does the cabinet. */
export const noConnectors: Check = {
  code: 'no-connectors',
  severity: 'warning',
  *run(context) {
    for (const found of troubled(context, 'no connectors')) {
      yield {
        message: say`${meets(context, found)}, and neither this joint nor the cabinet says what holds it together`,
        cure: say`Name a connector and where it goes, as in: connect biscuit20 by lines 70, 180, or say how it is held instead: connect none "screwed".`,
        source: found.joint.source,
        related: [],
        about: aboutTrouble(found),
      };
    }
  },
};
