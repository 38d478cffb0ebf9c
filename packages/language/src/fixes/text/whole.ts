import { isJobLine, isPartLine } from '../../generated/ast.js';
import type { Case, Cure, Fix } from '../fix.js';
import { lengthIn } from '../support/figures.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';
import { nodeOf, textAt } from '../support/node.js';
import { instead } from '../support/place.js';

const COUNTED = 'there are more or fewer parts than were read before';

/** Writes the whole number next to one that is none, or turns numbers that run backwards. */
export const whole: Fix = {
  name: 'whole',
  codes: ['not-whole'],
  most: 2,
  mayFollow: {
    ...hiddenUntilRead(READ),
    'no-such-part': COUNTED,
    'offset-count': COUNTED,
    'one-part-wanted': COUNTED,
    'part-not-fixed': COUNTED,
    'part-unattached': COUNTED,
    'parts-overlap': COUNTED,
    'never-used': COUNTED,
  },
  *offer(about): Iterable<Cure> {
    const { source } = about.finding;
    for (const number of wholeNear(about))
      yield { title: `Write ${number}`, edits: [{ ...source, text: String(number) }] };
    const line = nodeOf(about, isPartLine);
    if (!line?.from || !line.to) return;
    const [from, to] = [line.from.$cstNode?.text ?? '', line.to.$cstNode?.text ?? ''];
    yield { title: `Write ${to} to ${from}`, edits: [instead(line.from, to), instead(line.to, from)] };
  },
};

function wholeNear(about: Case): readonly number[] {
  const { value } = about.finding.data ?? {};
  const least = nodeOf(about, isJobLine) ? 1 : 0;
  const given = lengthIn(value)?.toNumber() ?? Number(textAt(about));
  if (!Number.isFinite(given)) return [];
  return [...new Set([Math.floor(given), Math.ceil(given)].map((number) => Math.max(least, number)))];
}
