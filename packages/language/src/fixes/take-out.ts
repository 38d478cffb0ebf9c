import { isDimensionLine, isJoint, isPlacing } from '../generated/ast.js';
import { textOf } from '../interpret/source.js';
import type { Cure, Fix } from './fix.js';
import { statementOf, without } from './support/place.js';

/** Facts of a joint that place parts. */
const PLACING = new Set(['FlushFact', 'SideFact', 'CentredFact', 'OpeningsFact']);

/** Takes out one of the statements, or one of a joint's facts, that do not agree. */
export const takeOut: Fix = {
  name: 'take-out',
  codes: ['does-not-close'],
  most: 3,
  mayFollow: {
    'shelf-proud': 'parts that could not be placed are compared once the sizes close',
    'slot-near-edge': 'slots are laid out once the sizes close',
    'slots-collide': 'slots are laid out once the sizes close',
    'spacer-not-in-stock': 'spacers are made up once the sizes close',
    'spacer-alias': 'spacers are made up once the sizes close',
    'ends-differ': 'stops are set once the sizes close',
    'stop-not-on-step': 'stops are set once the sizes close',
    'stop-out-of-range': 'stops are set once the sizes close',
    'groove-shows': 'grooves are cut once the sizes close',
    'look-alike': 'sizes are compared once they close',
    'joint-can-rotate': 'slots are laid out once the sizes close',
  },
  *offer(about): Iterable<Cure> {
    const { data, about: what } = about.finding;
    const others = Array.isArray(data?.statements) ? (data.statements as readonly string[]) : [];
    for (const id of new Set([what.statement ?? '', ...others])) {
      const statement = statementOf(about, id);
      if (isDimensionLine(statement) || isPlacing(statement))
        yield { title: `Take out "${textOf(statement)}"`, edits: [without(statement)] };
      if (isJoint(statement))
        for (const fact of statement.facts)
          if (PLACING.has(fact.$type)) yield { title: `Take "${textOf(fact)}" out of "${id}"`, edits: [without(fact)] };
    }
  },
};
