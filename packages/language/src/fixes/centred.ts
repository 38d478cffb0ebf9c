import { isAcrossFact } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { jointOf, setFact } from './support/facts.js';

/** Mills a joint's slots in the middle of the thickness. */
export const centred: Fix = {
  name: 'centred',
  codes: ['wrong-face-hides', 'thin-wall'],
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (!joint) return;
    yield {
      title: 'Mill in the middle of the thickness: centred in thickness',
      edits: [setFact(joint, 'centred in thickness', isAcrossFact)],
      preferred: about.finding.code === 'wrong-face-hides',
    };
  },
};
