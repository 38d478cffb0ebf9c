/** The one stretch in which two texts differ: `start` in both, its end in each. */
export interface Stretch {
  readonly start: number;
  readonly endBefore: number;
  readonly endNow: number;
}

/** What somebody typing has changed: the texts are the same before it and after it. */
export function changedStretch(before: string, now: string): Stretch {
  const most = Math.min(before.length, now.length);
  let start = 0;
  while (start < most && before.charCodeAt(start) === now.charCodeAt(start)) start += 1;
  let same = 0;
  while (same < most - start && before.charCodeAt(before.length - 1 - same) === now.charCodeAt(now.length - 1 - same))
    same += 1;
  return { start, endBefore: before.length - same, endNow: now.length - same };
}
