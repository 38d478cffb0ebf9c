import type { Edit } from './edits.js';

/**
 * The edits that change nothing but what stands on some lines of a text: none that joins or breaks lines there or
 * reaches beyond, and of an edit that goes on from line to line the part that belongs to these.
 * @param first,last lines, counted from 0, both included
 */
export function editsOfLines(text: string, edits: readonly Edit[], first: number, last: number): Edit[] {
  const starts = lineStarts(text);
  const from = starts[first];
  if (from === undefined) return [];
  const to = starts[last + 1] ?? text.length + 1;
  return edits.flatMap((edit) => byLine(text, edit)).filter((edit) => edit.start >= from && edit.end < to);
}

/** An edit cut at the ends of lines if it leaves as many as there were; none if it does not. */
function byLine(text: string, edit: Edit): Edit[] {
  const [old, now] = [text.slice(edit.start, edit.end).split(LINE_END), edit.text.split(LINE_END)];
  if (old.length !== now.length) return [];
  let at = edit.start;
  return old.flatMap((blanks, index) => {
    const start = at;
    const end = start + blanks.length;
    at = end + (LINE_END.exec(text.slice(end, end + 2))?.[0].length ?? 0);
    const instead = now[index] ?? '';
    return blanks === instead ? [] : [{ start, end, text: instead }];
  });
}

const LINE_END = /\r\n|\r|\n/;

/** Where the lines of a text begin. */
function lineStarts(text: string): number[] {
  return [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map(({ 0: end, index }) => index + end.length)];
}
