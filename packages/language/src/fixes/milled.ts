import type { Cure, Fix } from './fix.js';
import { writeAfter } from './support/braces.js';
import { statementOf } from './support/place.js';

/** Says whether edges are milled before or after they are banded. */
export const milled: Fix = {
  name: 'milled',
  codes: ['banded-datum'],
  mayFollow: {
    'slot-near-edge': 'the band’s thickness is counted on the edge it is milled from',
    'spacer-not-in-stock': 'the band’s thickness is counted in the setback',
  },
  *offer(about): Iterable<Cure> {
    const statement = statementOf(about);
    if (!statement) return;
    for (const when of ['after', 'before'])
      yield {
        title: `Say that slots are milled ${when} banding`,
        edits: [writeAfter(statement, `milled ${when} banding`)],
      };
  },
};
