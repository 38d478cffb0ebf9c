import { say } from '@dryfit/engine';
import type { Case, Cure, Fix } from './fix.js';
import { writeInCabinet, writeInto } from './support/braces.js';
import { titled } from './support/facts.js';
import { lengthIn } from './support/figures.js';
import { statementOf } from './support/place.js';

/** Allows what the workshop gets round by hand, with how it does as the reason. */
export const sayHow: Fix = {
  name: 'say-how',
  codes: ['ends-differ', 'stop-out-of-range', 'too-big-for-jig', 'handed', 'look-alike', 'groove-shows'],
  *offer(about): Iterable<Cure> {
    const how = means(about);
    const statement = statementOf(about);
    const line = `allow ${about.finding.code} "${how}"`;
    const edit = statement ? writeInto(statement, line) : about.cabinet && writeInCabinet(about.cabinet, line);
    if (edit) yield { title: `Say that it is ${how}`, edits: [edit] };
  },
};

function means(about: Case): string {
  const { code, data } = about.finding;
  const block = lengthIn(data?.block);
  if (code === 'ends-differ')
    return block ? titled(say`made up by a block of ${block} at the stop`, 'mm') : 'made up by a block at the stop';
  if (code === 'groove-shows') return 'to be seen';
  return code === 'handed' || code === 'look-alike' ? 'marked when it is cut' : 'marked out by hand';
}
