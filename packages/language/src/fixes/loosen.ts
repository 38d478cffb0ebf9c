import { isConnectFact, isJoint } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { setFact } from './support/facts.js';
import { UNUSED } from './support/follow.js';
import { statementOf } from './support/place.js';

/** Takes the connectors out of one of the joints that hold each other, so that it may close last and from anywhere. */
export const loosen: Fix = {
  name: 'loosen',
  codes: ['cannot-be-assembled'],
  mayFollow: UNUSED,
  *offer(about): Iterable<Cure> {
    const { loosen: ids = [] } = about.finding.data ?? {};
    for (const id of new Set(ids)) {
      const joint = statementOf(about, id);
      if (!isJoint(joint)) continue;
      yield {
        title: `Make "${id}" without connectors: connect none "screwed"`,
        edits: [setFact(joint, 'connect none "screwed"', isConnectFact)],
      };
    }
  },
};
