import { formatSteps } from './format.js';
import type { Reader } from './pieces.js';
import type { Steps } from './steps.js';

/** A stretch of a text, as offsets with `end` exclusive, and what takes its place. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** What formatting changes: nothing but white space, each stretch by itself, in the order they stand. */
export function* formatEdits(text: string, reader: Reader): Steps<Edit[]> {
  return editsBetween(text, yield* formatSteps(text, reader));
}

/** The edits that turn one text into another that differs in white space only. */
function editsBetween(before: string, after: string): Edit[] {
  const edits: Edit[] = [];
  let [from, to] = [0, 0];
  while (from < before.length || to < after.length) {
    const [old, now] = [blanks(before, from), blanks(after, to)];
    if (old !== now) edits.push({ start: from, end: from + old.length, text: now });
    from += old.length + 1;
    to += now.length + 1;
  }
  return edits;
}

/** White space at a place, empty if there is none. */
function blanks(text: string, at: number): string {
  const found = /\s+/y;
  found.lastIndex = at;
  return found.exec(text)?.[0] ?? '';
}
