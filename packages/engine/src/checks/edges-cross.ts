import { say } from '../fit/text.js';
import type { Check } from './check.js';
import { aboutTrouble, meets, troubled } from './support/trouble.js';

/** Connectors are asked for where two edges cross, and the slots of one edge would lie across the other. */
export const edgesCross: Check = {
  code: 'edges-cross',
  severity: 'error',
  *run(context) {
    for (const found of troubled(context, 'edges cross')) {
      const { joint } = found;
      const [entering, host] = [context.part(joint.entering), context.part(joint.host)];
      if (!entering || !host) continue;
      yield {
        message: say`${meets(context, found)} edge to edge, but ${entering.id} is ${entering.attitude} and ${host.id} ${host.attitude}: the edges cross, and a row of slots along one would lie across the other`,
        cure: say`Let the edge of one part meet a face of the other, or say how they are held: connect none "screwed".`,
        source: joint.source,
        related: [entering, host].map((part) => ({
          message: say`${part.id} is ${part.attitude}`,
          source: part.source,
        })),
        about: aboutTrouble(found),
      };
    }
  },
};
