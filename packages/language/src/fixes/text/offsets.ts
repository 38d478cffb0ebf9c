import { isSideFact } from '../../generated/ast.js';
import type { Cure, Fix } from '../fix.js';
import { nodeOf, textAt } from '../support/node.js';
import { side } from './side.js';

/** Writes as many offsets as there are parts, or one for all. */
export const offsets: Fix = {
  name: 'offsets',
  codes: ['offset-count'],
  mayFollow: side.mayFollow,
  *offer(about): Iterable<Cure> {
    const fact = nodeOf(about, isSideFact);
    const wanted = Number(about.finding.data?.wanted);
    const [first] = fact?.by ?? [];
    if (!fact || !first?.$cstNode) return;
    const { source } = about.finding;
    const last = fact.by[wanted - 1]?.$cstNode;
    if (wanted > 1 && last) {
      const text = textAt(about, { start: source.start, end: last.end });
      yield { title: `Keep the first ${wanted} offsets: ${text}`, edits: [{ ...source, text }] };
    }
    const { text } = first.$cstNode;
    yield { title: `Write ${text} for ${wanted === 1 ? 'the part' : 'all'}`, edits: [{ ...source, text }] };
  },
};
