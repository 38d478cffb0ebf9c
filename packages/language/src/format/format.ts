import { aligned } from './align.js';
import { cut, lineEnd, type Pieces, type Reader } from './pieces.js';
import { type Row, rowsOf } from './rows.js';
import { numberText } from './spacing.js';
import { type Steps, toEnd } from './steps.js';
import { isComment, linesOf, type Unit, unitsOf } from './units.js';

/**
 * A text in the house's layout: a line for each statement and fact, two blanks for each brace it stands in, single
 * blanks between words. Braces that stand on one line stay there; columns that are lined up stay lined up; blank
 * lines are kept, one at a time; comments stay where they are. Lines that cannot be read are left as they are, and
 * the line ends the text has are kept. Formatting twice changes nothing more.
 */
export const formatText = (text: string, reader: Reader): string => toEnd(formatSteps(text, reader));

/** The same in steps. */
export function* formatSteps(text: string, reader: Reader): Steps<string> {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  const before = cut(text, reader);
  yield;
  const formatted = mark + (yield* layOut(before, lineEnd(text)));
  yield;
  return formatted === text || sameMeaning(before, cut(formatted, reader)) ? formatted : text;
}

function* layOut(text: Pieces, end: string): Steps<string> {
  const lines: string[] = [];
  let block: Row[] = [];
  const flush = () => {
    lines.push(...aligned(block));
    block = [];
  };
  let previous: Unit | undefined;
  let [copied, done] = [-1, 0];
  for (const unit of unitsOf(text)) {
    const [from, to] = linesOf(unit.pieces);
    if (++done % EVERY === 0) yield;
    const gap = previous !== undefined && from - linesOf(previous.pieces)[1] > 1;
    if (gap && !unit.first && !unit.last) {
      flush();
      lines.push('');
    }
    if (unit.unread) {
      flush();
      lines.push(...text.lines.slice(Math.max(from, copied + 1), to + 1));
      copied = to;
    } else block.push(...rowsOf(unit, end));
    previous = unit;
  }
  flush();
  return lines.map((line) => line + end).join('');
}

/** Statements and facts that are laid out in one step. */
const EVERY = 200;

/** True if two texts have the same tokens and comments, each with the same place in the grammar. */
function sameMeaning(a: Pieces, b: Pieces): boolean {
  const [one, other] = [a, b].map(({ pieces }) => pieces.filter((piece) => !isComment(piece)));
  const [notes, others] = [a, b].map(({ pieces }) =>
    pieces.filter(isComment).map(({ text }) => text.replace(/\s+/g, ' ').trim()),
  );
  return (
    one?.length === other?.length &&
    (one ?? []).every(({ text, leaf }, index) => {
      const match = other?.[index];
      return numberText(text) === numberText(match?.text ?? '') && leaf?.grammarSource === match?.leaf?.grammarSource;
    }) &&
    notes?.join('\n') === others?.join('\n')
  );
}
