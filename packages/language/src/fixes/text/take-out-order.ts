import { isLateLine, isMillLine } from '../../generated/ast.js';
import { textOf } from '../../interpret/source.js';
import type { Cure, Fix } from '../fix.js';
import { nodeOf } from '../support/node.js';
import { without } from '../support/place.js';

/** Takes out a line of a job that puts its work in an order: of those that cannot be kept together, any. */
export const takeOutOrder: Fix = {
  name: 'take-out-order',
  codes: ['order-cycle', 'not-in-job'],
  most: 3,
  mayFollow: { 'order-cycle': 'where lines make several rings, another one comes to light' },
  *offer(about): Iterable<Cure> {
    const places = [about.finding.source, ...about.finding.related.map(({ source }) => source)];
    const lines = places.map((place) => nodeOf(about, isLateLine, place) ?? nodeOf(about, isMillLine, place));
    for (const line of new Set(lines)) if (line) yield { title: `Take out "${textOf(line)}"`, edits: [without(line)] };
  },
};
