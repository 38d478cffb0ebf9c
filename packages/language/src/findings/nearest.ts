/** The name nearest to one that was mistyped; undefined if none is near enough to be meant. */
export function nearest(name: string, names: Iterable<string>): string | undefined {
  const limit = Math.max(1, Math.floor(name.length / 3));
  let best: string | undefined;
  let least = limit + 1;
  for (const candidate of names) {
    if (Math.abs(candidate.length - name.length) > limit || candidate === name) continue;
    const distance = edits(name.toLowerCase(), candidate.toLowerCase());
    if (distance < least || (distance === least && best !== undefined && candidate < best)) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

/** Fewest letters to put in, take out, change or swap with their neighbour. */
function edits(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row[j] = Math.min(changed, (above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      const swapped = a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] && a[i - 1] !== b[j - 1];
      if (swapped && i > 1 && j > 1) row[j] = Math.min(row[j] ?? 0, (before[j - 2] ?? 0) + 1);
    }
    before = above;
    above = row;
  }
  return above[b.length] ?? 0;
}
