import { type Cancellation, interruptAndCheck, type LangiumDocument } from 'langium';
import type { Range, TextEdit } from 'vscode-languageserver-protocol';
import type { Edit } from '../format/edits.js';
import type { Stretch } from '../tree/leaves.js';

/** A stretch of a text as editors count. */
export function rangeOf({ textDocument }: Pick<LangiumDocument, 'textDocument'>, { start, end }: Stretch): Range {
  return { start: textDocument.positionAt(start), end: textDocument.positionAt(end) };
}

/** What an editor shows, as offsets. */
export function stretchOf({ textDocument }: Pick<LangiumDocument, 'textDocument'>, { start, end }: Range): Stretch {
  return { start: textDocument.offsetAt(start), end: textDocument.offsetAt(end) };
}

export function toTextEdits(document: Pick<LangiumDocument, 'textDocument'>, edits: readonly Edit[]): TextEdit[] {
  return edits.map((edit) => ({ range: rangeOf(document, edit), newText: edit.text }));
}

/** All that is given one by one, giving way now and then to what waits, and to whoever no longer wants it. */
export async function collect<T>(items: Iterable<T>, token: Cancellation.CancellationToken): Promise<T[]> {
  const collected: T[] = [];
  for (const item of items) {
    if (collected.length % EVERY === 0) await interruptAndCheck(token);
    collected.push(item);
  }
  return collected;
}

const EVERY = 64;
