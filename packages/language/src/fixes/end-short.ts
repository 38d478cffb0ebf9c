import { Rational, SIDES, say } from '@dryfit/engine';
import { isSideFact } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { jointOf, titled } from './support/facts.js';
import { decent, writtenAs } from './support/figures.js';
import { instead } from './support/place.js';

/** Ends a panel short of the end of what it goes into, so that its groove ends there as well. */
export const endShort: Fix = {
  name: 'end-short',
  codes: ['groove-shows'],
  most: 1,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    const end = SIDES.find((side) => side === about.finding.data?.end);
    for (const fact of joint?.facts ?? []) {
      if (!isSideFact(fact) || fact.side !== end || !fact.at?.$cstNode) continue;
      if (fact.relation !== 'flush' && fact.relation !== 'set') continue;
      for (const short of SHORT) {
        const by = decent(Rational.of(short), about.unit, 'more');
        const line = `${end} set back ${writtenAs(by, about.unit)} from ${fact.at.$cstNode.text}`;
        yield {
          title: titled(say`End it ${by} short of the ${end}: ${line}`, about.unit),
          edits: [instead(fact, line)],
        };
      }
    }
  },
};

/** How far short is tried, mm. */
const SHORT = [1, 2, 5, 10, 20];
