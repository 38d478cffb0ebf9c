import { isConnectFact } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { jointOf, setFact } from './support/facts.js';
import { UNUSED } from './support/follow.js';

/** Says that a joint is held without connectors. */
export const connectNone: Fix = {
  name: 'connect-none',
  codes: ['no-connectors', 'edges-cross', 'faces-meet', 'no-connector-lands'],
  mayFollow: UNUSED,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (!joint) return;
    const faces = about.finding.code === 'faces-meet';
    for (const how of faces ? ['glued', 'screwed'] : ['screwed', 'glued'])
      yield {
        title: `Say that it is ${how}: connect none "${how}"`,
        edits: [setFact(joint, `connect none "${how}"`, isConnectFact)],
      };
  },
};
