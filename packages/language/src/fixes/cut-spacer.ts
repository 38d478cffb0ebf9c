import { say } from '@dryfit/engine';
import { isSpacerFact } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { jointOf, setFact, titled } from './support/facts.js';
import { lengthIn } from './support/figures.js';

/** Has a block cut to the setback of a joint, where no stock spacers make it up. */
export const cutSpacer: Fix = {
  name: 'cut-spacer',
  codes: ['spacer-not-in-stock', 'shelf-needs-spacer'],
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    const by = lengthIn(about.finding.data?.setback);
    if (!joint || !by) return;
    yield {
      title: titled(say`Cut a block ${by} wide for this joint: spacer cut`, about.unit),
      edits: [setFact(joint, 'spacer cut', isSpacerFact)],
      preferred: true,
    };
  },
};
