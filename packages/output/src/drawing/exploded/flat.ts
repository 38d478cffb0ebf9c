import type { Flat } from './view.js';

/** Convex outlines on paper. */
export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function boundsOf(points: readonly Flat[]): Bounds {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

/** Whether two bounds share more than a border. */
export const meet = (a: Bounds, b: Bounds): boolean =>
  a.left < b.right - NEAR && b.left < a.right - NEAR && a.top < b.bottom - NEAR && b.top < a.bottom - NEAR;

const NEAR = 1e-6;

const turn = (o: Flat, a: Flat, b: Flat): number => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** Convex hull, corners in one sense of turning (Andrew's monotone chain). */
export function hullOf(points: readonly Flat[]): readonly Flat[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Flat[]): Flat[] => {
    const chain: Flat[] = [];
    for (const p of list) {
      while (chain.length > 1 && turn(chain.at(-2) as Flat, chain.at(-1) as Flat, p) <= NEAR) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** Whether a point lies inside a hull or on it. */
export const inside = (hull: readonly Flat[], p: Flat): boolean =>
  hull.length > 2 && hull.every((corner, i) => turn(corner, hull[(i + 1) % hull.length] as Flat, p) >= -NEAR);

/** Whether two hulls share more than a border: no side of either has the other wholly beyond it. */
export const overlap = (a: readonly Flat[], b: readonly Flat[]): boolean => !apart(a, b) && !apart(b, a);

function apart(a: readonly Flat[], b: readonly Flat[]): boolean {
  return a.some((corner, i) => {
    const next = a[(i + 1) % a.length] as Flat;
    const length = Math.hypot(next[0] - corner[0], next[1] - corner[1]);
    return b.every((p) => turn(corner, next, p) <= NEAR * length);
  });
}
