import { isDimensionLine, isJoint, isLoadLine, isPlacing } from '../generated/ast.js';
import { textOf } from '../interpret/source.js';
import type { Cure, Fix } from './fix.js';
import { because, MILLING, SIZES } from './support/follow.js';
import { statementOf, without } from './support/place.js';

/** Facts of a joint that place parts. */
const PLACING = new Set(['FlushFact', 'SideFact', 'CentredFact', 'OpeningsFact']);

/** Takes out one of the statements, or one of a joint's facts, that do not agree; or a load that tells nothing. */
export const takeOut: Fix = {
  name: 'take-out',
  codes: ['does-not-close', 'load-not-reckoned'],
  most: 3,
  mayFollow: because('sizes that agree are the first that can be looked at', ...MILLING, ...SIZES),
  *offer(about): Iterable<Cure> {
    const { data, about: what } = about.finding;
    const others = Array.isArray(data?.statements) ? (data.statements as readonly string[]) : [];
    for (const id of new Set([what.statement ?? '', ...others])) {
      const statement = statementOf(about, id);
      if (isDimensionLine(statement) || isPlacing(statement) || isLoadLine(statement))
        yield { title: `Take out "${textOf(statement)}"`, edits: [without(statement)] };
      if (isJoint(statement))
        for (const fact of statement.facts)
          if (PLACING.has(fact.$type)) yield { title: `Take "${textOf(fact)}" out of "${id}"`, edits: [without(fact)] };
    }
  },
};
