import { leavesOf } from '../../tree/leaves.js';
import type { Cure, FileEdit, Fix } from '../fix.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';
import { textAt } from '../support/node.js';

/** Words that may belong to a setting before its value, and words of its value behind the one pointed at. */
const BEFORE = [0, 1, 2, 3];
const BEHIND = [0, 1, 2];

/** Takes out what is written a second time, or what does not belong here. */
export const removeAgain: Fix = {
  name: 'remove-again',
  codes: ['written-twice', 'not-of-this-kind'],
  most: 1,
  mayFollow: {
    ...hiddenUntilRead(READ),
    'never-used': 'it was used by nothing but what is taken out',
    'fact-missing': 'what is left out was the wrong one for this joint, which still wants its own',
  },
  *offer(about): Iterable<Cure> {
    const { source } = about.finding;
    const leaves = [...leavesOf(about.file.$cstNode)].filter(({ hidden }) => !hidden);
    const first = leaves.findIndex(({ end }) => end > source.start);
    const last = leaves.findLastIndex(({ offset }) => offset < source.end);
    for (const before of BEFORE) {
      for (const behind of BEHIND) {
        const [from, to] = [leaves[first - before], leaves[last + behind]];
        if (!from || !to) continue;
        const edit = gap(about.document.textDocument.getText(), source.uri, from.offset, to.end);
        yield {
          title: `Take out "${textAt(about, { start: from.offset, end: to.end }).replace(/\s+/g, ' ')}"`,
          edits: [edit],
        };
      }
    }
  },
};

/** Takes a stretch out with its line if it stands alone on it, else with the blanks before it. */
function gap(text: string, uri: string, start: number, end: number): FileEdit {
  const line = text.lastIndexOf('\n', start - 1) + 1;
  const behind = /^[ \t]*(\r?\n|$)/.exec(text.slice(end))?.[0];
  const blanks = text.slice(line, start).trim() === '';
  if (blanks && behind !== undefined) return { uri, start: line, end: end + behind.length, text: '' };
  const before = /[ \t]*$/.exec(text.slice(line, start))?.[0].length ?? 0;
  return { uri, start: blanks ? start : start - before, end, text: '' };
}
