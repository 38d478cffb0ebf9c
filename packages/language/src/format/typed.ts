import { type Edit, formatEdits } from './edits.js';
import { editsOfLines } from './lines.js';
import type { Reader } from './pieces.js';
import type { Steps } from './steps.js';

/** What is laid out while it is typed: a line that was ended, and a block that was closed. */
export const TYPED = ['}', '\n'] as const;

/**
 * What to change after a character was typed: on the line that was ended, or in front of the brace that closes.
 * Nothing on the line the cursor is on behind it, and nothing on any other line.
 * @param offset where the cursor is, behind what was typed
 */
export function* editsAfterTyping(text: string, offset: number, typed: string, reader: Reader): Steps<Edit[]> {
  const line = lineAt(text, offset);
  if (typed === '\n') return line === 0 ? [] : editsOfLines(text, yield* formatEdits(text, reader), line - 1, line - 1);
  if (typed !== '}' || text[offset - 1] !== '}') return [];
  return editsOfLines(text, yield* formatEdits(text, reader), line, line).filter(({ end }) => end < offset);
}

const lineAt = (text: string, offset: number): number => text.slice(0, offset).split(/\r\n|\r|\n/).length - 1;
