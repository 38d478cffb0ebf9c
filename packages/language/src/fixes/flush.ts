import { SIDES, say } from '@dryfit/engine';
import { isSideFact } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { jointOf, titled } from './support/facts.js';
import { instead } from './support/place.js';

/** Brings a side flush with what the part meets, in the place of the fact that has it set back or stand out. */
export const flush: Fix = {
  name: 'flush',
  codes: ['references-differ', 'shelf-proud'],
  most: 1,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    const { side, reference } = about.finding.data ?? {};
    const wanted = SIDES.find((one) => one === side || one === reference);
    for (const fact of joint?.facts ?? [])
      if (isSideFact(fact) && fact.side === wanted)
        yield {
          title: titled(say`Bring the ${fact.side} flush: flush ${fact.side}`, about.unit),
          edits: [instead(fact, `flush ${fact.side}`)],
          preferred: true,
        };
  },
};
