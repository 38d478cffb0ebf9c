import { SIDES } from '@dryfit/engine';
import type { End, Plane } from '../generated/ast.js';
import { wordsOfRef } from '../interpret/words.js';
import type { Cure, Fix } from './fix.js';
import { jointOf } from './support/facts.js';
import { because, MILLING, SIZES } from './support/follow.js';
import { instead } from './support/place.js';

/** Names the outer side of a part that is mitred to a turned one: the side that runs into the cant. */
export const mitreSide: Fix = {
  name: 'mitre-side',
  codes: ['turned-otherwise'],
  most: 2,
  mayFollow: because('nothing is milled until it is known where the two meet', ...MILLING, ...SIZES, 'mitre-no-room'),
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (joint?.verb !== 'mitre') return;
    const ends: readonly (End | Plane | undefined)[] = [
      ...joint.between.flatMap(({ low, high }) => [low, high]),
      ...joint.to,
    ];
    for (const end of ends) {
      if (!end?.ref) continue;
      const name = wordsOfRef(end.ref);
      for (const side of SIDES) {
        if (side === end.side || side === 'bottom' || side === 'top') continue;
        yield { title: `Name the outer side of ${name}: ${name}.${side}`, edits: [instead(end, `${name}.${side}`)] };
      }
    }
  },
};
