import type { Bounded } from '../number/bounded.js';
import type { Solid } from './solid.js';
import type { Vector } from './vector.js';

/** Rounding of the coordinates themselves, mm: far above that of doubles, far below anything that can be made. */
const ROUNDING = 1e-9;
/** How exactly a distance has to be known once it is known whether it is less than what was asked. */
const PRECISE = 1e-6;
const MOST_STEPS = 20_000;
/** Steps spent on figures to print once the distance is told from what was asked. */
const ENOUGH_STEPS = 500;

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** How near two bodies come to each other, and two places of theirs where they do, as far as it had to be looked for. */
export interface Approach {
  readonly apart: Bounded;
  readonly from: Vector;
  readonly to: Vector;
}

/** Distance between two convex bodies, mm; zero where they meet. */
export const distance = (a: Solid, b: Solid, asked: number): Bounded => approach(a, b, asked).apart;

/**
 * Distance between two convex bodies, mm, and where it is; zero where they meet. Found by going to and fro between the
 * two nearest points (alternating projections with momentum); each step gives an upper bound, and the planes square to
 * the line between the points a lower one. It stops when the bounds tell the distance from `asked` and are near enough to print.
 */
export function approach(a: Solid, b: Solid, asked: number): Approach {
  let from = a.nearest(middle(b));
  let to = from;
  let ahead = from;
  let speed = 1;
  let lower = 0;
  let upper = Number.POSITIVE_INFINITY;
  for (let step = 0; step < MOST_STEPS; step++) {
    to = b.nearest(ahead);
    const next = a.nearest(to);
    const between = minus(next, to);
    const length = Math.sqrt(dot(between, between));
    if (length < PRECISE) return { apart: { value: 0, error: length + ROUNDING }, from: next, to };
    const back: Vector = [-between[0], -between[1], -between[2]];
    const gap = dot(between, minus(a.farthest(back), b.farthest(between))) / length;
    lower = Math.max(lower, gap);
    // Carried on in the direction of the last step, the steps grow; past the nearest point they begin anew.
    const overshot = dot(minus(ahead, next), minus(next, from)) > 0;
    const faster = overshot ? 1 : (1 + Math.sqrt(1 + 4 * speed * speed)) / 2;
    const carry = overshot ? 0 : (speed - 1) / faster;
    ahead = [
      next[0] + carry * (next[0] - from[0]),
      next[1] + carry * (next[1] - from[1]),
      next[2] + carry * (next[2] - from[2]),
    ];
    from = next;
    speed = faster;
    upper = Math.min(upper, length);
    const told = upper < asked || (lower > 0 && lower >= asked);
    if (upper - lower < ROUNDING || (told && (upper - lower < PRECISE || step > ENOUGH_STEPS))) break;
  }
  return { apart: { value: (lower + upper) / 2, error: (upper - lower) / 2 + ROUNDING }, from, to };
}

const middle = (s: Solid): Vector => [(s.lo[0] + s.hi[0]) / 2, (s.lo[1] + s.hi[1]) / 2, (s.lo[2] + s.hi[2]) / 2];
