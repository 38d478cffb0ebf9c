import { say } from '@dryfit/engine';
import type { Cure, Fix } from './fix.js';
import { titled } from './support/facts.js';
import { lengthIn } from './support/figures.js';
import { documentAt, rewriteNumber } from './support/numbers.js';
import { textIn } from './support/place.js';

/** Writes the number that a finding says to write instead. */
export const changeNumber: Fix = {
  name: 'change-number',
  codes: ['does-not-close', 'spacer-not-in-stock', 'stop-not-on-step'],
  mayFollow: {
    'shelf-proud': 'parts that could not be placed are compared once the sizes close',
    'slot-near-edge': 'slots are laid out once the sizes close',
    'slots-collide': 'slots are laid out once the sizes close',
    'spacer-not-in-stock': 'spacers are made up once the sizes close',
    'ends-differ': 'stops are set once the sizes close',
    'stop-not-on-step': 'stops are set once the sizes close',
    'stop-out-of-range': 'stops are set once the sizes close',
    'groove-shows': 'grooves are cut once the sizes close',
    'look-alike': 'sizes are compared once they close',
    'joint-can-rotate': 'slots are laid out once the sizes close',
    'spacer-alias': 'spacers are made up once the sizes close',
  },
  *offer(about): Iterable<Cure> {
    const { data, related } = about.finding;
    const [from, to, place] = [lengthIn(data?.from), lengthIn(data?.to), related[0]?.source];
    const document = place && documentAt(about, place);
    if (!from || !to || !document || to.sign() <= 0) return;
    const edit = rewriteNumber(about, place, from, to);
    if (!edit) return;
    const before = textIn(document).slice(place.start, place.end);
    const title =
      edit.end > edit.start
        ? say`Write ${edit.text} instead of ${before}`
        : say`Make ${`"${before}"`} ${to.sub(from).abs()} ${to.gt(from) ? 'more' : 'less'}`;
    yield { title: titled(title, about.unit), edits: [edit] };
  },
};
