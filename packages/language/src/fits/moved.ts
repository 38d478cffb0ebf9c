import { changedStretch } from '../parser/stretch.js';

/**
 * Where an offset into a text is after the text has been changed in one stretch, as somebody typing changes it: what
 * stands before the stretch stays, what stands after it moves along, and what stood in it is at its nearer end.
 */
export function moved(before: string, now: string): (offset: number) => number {
  const { start, endBefore, endNow } = changedStretch(before, now);
  return (offset) => {
    if (offset <= start) return offset;
    if (offset >= endBefore) return offset - endBefore + endNow;
    return Math.min(offset, endNow);
  };
}
