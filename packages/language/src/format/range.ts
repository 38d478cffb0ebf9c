import { type Edit, formatEdits } from './edits.js';
import { editsOfLines } from './lines.js';
import type { Reader } from './pieces.js';
import type { Steps } from './steps.js';

/** What formatting changes on the lines that a stretch of a text touches, and nothing on others. */
export function* editsInRange(text: string, start: number, end: number, reader: Reader): Steps<Edit[]> {
  const all = yield* formatEdits(text, reader);
  const [first, last] = [lineAt(text, start), lineAt(text, end)];
  // A stretch that ends where a line begins does not touch that line.
  const ends = last > first && (end === 0 || /[\r\n]/.test(text[end - 1] ?? ''));
  const lines = editsOfLines(text, all, first, ends ? last - 1 : last);
  const inside = all.filter((edit) => edit.start >= start && edit.end <= end && breaks(text, edit));
  return [...lines, ...inside].sort((a, b) => a.start - b.start);
}

/** True if an edit takes out line ends or puts in some. */
const breaks = (text: string, { start, end, text: now }: Edit): boolean => count(text.slice(start, end)) !== count(now);

const count = (text: string): number => text.split(/\r\n|\r|\n/).length;

const lineAt = (text: string, offset: number): number => count(text.slice(0, offset)) - 1;
