import type { Stages } from './stages.js';
import type { Class, Visit } from './visit.js';

/** Steps that are tried in all; beyond it the sets are too many. */
export const MOST_STEPS = 4_000_000;

/**
 * The cheapest visits that serve every class, and their order, by dynamic programming over the sets of classes served
 * (Held and Karp 1962, each node being a choice of settings): a visit serves at once every class that it is in. Undefined
 * where the sets are too many.
 * @param cost of going from one visit, or from the empty bench, to another; whole numbers, for which a way round by a
 *   third is never shorter
 * @param most steps that may be tried
 */
export function bySets(
  classes: readonly Class[],
  stages: Stages,
  cost: (from: Visit | undefined, to: Visit) => number,
  most: number,
): readonly Visit[] | undefined {
  const visits = [...new Map(classes.flatMap((one) => [...one])).entries()];
  const count = visits.length;
  if (classes.length > 20 || 2 ** classes.length * count * count > most) return undefined;
  const serves = visits.map(([key]) => maskOf(classes, (one) => one.has(key)));
  const needs = visits.map(([, { stage }]) =>
    maskOf(classes, (one) => [...one.values()].some((other) => stages.before[stage]?.has(other.stage) === true)),
  );
  const step = [undefined, ...visits.map(([, visit]) => visit)].map((from) => visits.map(([, to]) => cost(from, to)));
  const all = 2 ** classes.length - 1;
  // By the set served and the visit made last, the least cost and the state it came from; the empty bench is row 0.
  const least = new Float64Array((all + 1) * (count + 1)).fill(Number.POSITIVE_INFINITY);
  const cameFrom = new Int32Array(least.length).fill(-1);
  least[0] = 0;
  for (let set = 0; set < all; set++)
    for (let last = 0; last <= count; last++) {
      const at = set * (count + 1) + last;
      const reached = least[at] as number;
      if (reached === Number.POSITIVE_INFINITY) continue;
      for (let to = 0; to < count; to++) {
        const served = set | (serves[to] as number);
        if (served === set || ((needs[to] as number) & ~set) !== 0) continue;
        const sum = reached + ((step[last] as number[])[to] as number);
        const then = served * (count + 1) + to + 1;
        if (sum >= (least[then] as number)) continue;
        least[then] = sum;
        cameFrom[then] = at;
      }
    }
  return tracedBack(all * (count + 1), count, least, cameFrom).flatMap((i) => visits[i]?.[1] ?? []);
}

const maskOf = (classes: readonly Class[], fits: (one: Class) => boolean): number =>
  classes.reduce((mask, one, i) => (fits(one) ? mask | (1 << i) : mask), 0);

function tracedBack(end: number, count: number, least: Float64Array, cameFrom: Int32Array): readonly number[] {
  let at = end;
  for (let i = end; i <= end + count; i++) if ((least[i] as number) < (least[at] as number)) at = i;
  const order: number[] = [];
  for (; (cameFrom[at] ?? -1) >= 0; at = cameFrom[at] as number) order.unshift((at % (count + 1)) - 1);
  return order;
}
