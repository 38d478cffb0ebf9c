import { say } from '@dryfit/engine';
import type { Cure, Fix } from './fix.js';
import { titled } from './support/facts.js';
import { lengthIn } from './support/figures.js';
import { because, MILLING, SIZES } from './support/follow.js';
import { documentAt, rewriteNumber } from './support/numbers.js';
import { textIn } from './support/place.js';

/** Writes the number that a finding says to write instead. */
export const changeNumber: Fix = {
  name: 'change-number',
  codes: ['does-not-close', 'cant-too-large', 'notch-too-large', 'spacer-not-in-stock', 'stop-not-on-step'],
  mayFollow: because('sizes that agree are the first that can be looked at', ...MILLING, ...SIZES),
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
