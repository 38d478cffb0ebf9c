import type { Bounds } from '../geometry/solid.js';

/** Something with a box around it. */
interface Bounded {
  readonly bounds: Bounds;
}

/**
 * Every pair whose boxes come nearer than `within` on all three axes, mm, by sort and sweep along the axis on which
 * the boxes are shortest against the room they spread over. Its cost grows with the number of boxes and of pairs found
 * on that axis, not with the square of the boxes.
 */
export function* pairsWithin<T extends Bounded>(items: readonly T[], within: number): Generator<readonly [T, T]> {
  if (items.length < 2) return;
  const [i, ...rest] = axesByCrowding(items);
  const sorted = [...items].sort((a, b) => a.bounds.lo[i] - b.bounds.lo[i]);
  for (let a = 0; a < sorted.length; a++) {
    const one = sorted[a] as T;
    const end = one.bounds.hi[i] + within;
    for (let b = a + 1; b < sorted.length; b++) {
      const two = sorted[b] as T;
      if (two.bounds.lo[i] >= end) break;
      if (rest.every((k) => near(one.bounds, two.bounds, k, within))) yield [one, two];
    }
  }
}

const near = (a: Bounds, b: Bounds, k: 0 | 1 | 2, within: number): boolean =>
  b.lo[k] - a.hi[k] < within && a.lo[k] - b.hi[k] < within;

/** The axis along which fewest boxes lie side by side first. */
function axesByCrowding(items: readonly Bounded[]): readonly [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2] {
  const crowding = ([0, 1, 2] as const).map((i) => {
    let [lo, hi, sum] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
    for (const { bounds } of items) {
      lo = Math.min(lo, bounds.lo[i]);
      hi = Math.max(hi, bounds.hi[i]);
      sum += bounds.hi[i] - bounds.lo[i];
    }
    return hi > lo ? sum / (hi - lo) : Number.POSITIVE_INFINITY;
  });
  const order = [0, 1, 2] as [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2];
  return order.sort((a, b) => (crowding[a] as number) - (crowding[b] as number));
}
