/**
 * Where an offset into a text is after the text has been changed in one stretch, as somebody typing changes it: what
 * stands before the stretch stays, what stands after it moves along, and what stood in it is at its nearer end.
 */
export function moved(before: string, now: string): (offset: number) => number {
  const most = Math.min(before.length, now.length);
  let start = 0;
  while (start < most && before.charCodeAt(start) === now.charCodeAt(start)) start += 1;
  let same = 0;
  while (same < most - start && before.charCodeAt(before.length - 1 - same) === now.charCodeAt(now.length - 1 - same))
    same += 1;
  const [endBefore, endNow] = [before.length - same, now.length - same];
  return (offset) => {
    if (offset <= start) return offset;
    if (offset >= endBefore) return offset - endBefore + endNow;
    return Math.min(offset, endNow);
  };
}
