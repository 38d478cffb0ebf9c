import type { FileEdit } from './fix.js';

/** The text of a file with the edits made that are for it, wherever they stand in the list. */
export function applied(text: string, uri: string, edits: readonly FileEdit[]): string {
  const own = edits.filter((edit) => edit.uri === uri);
  return [...own]
    .map((edit, i) => ({ ...edit, i }))
    .sort((a, b) => b.start - a.start || b.i - a.i)
    .reduce((before, { start, end, text: now }) => before.slice(0, start) + now + before.slice(end), text);
}

/** Whether edits can be made together: none lies within another. */
export function isSound(edits: readonly FileEdit[]): boolean {
  const sorted = [...edits].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : a.start - b.start));
  return sorted.every((edit, i) => {
    const next = sorted[i + 1];
    return edit.start <= edit.end && (!next || next.uri !== edit.uri || next.start >= edit.end);
  });
}
