import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { type Problem, tourCost } from './problem.js';

/** Shakings of the best order found unless fewer are asked for; each is followed by a descent. */
const SHAKES = 4000;
/** Descents beyond this many elementary comparisons are not begun: large matrices get fewer shakes. */
const WORK = 100_000_000;

/** How long a good order is sought. */
export interface Effort {
  readonly shakes?: number | undefined;
  /** Elementary comparisons after which no descent is begun any more. */
  readonly work?: number | undefined;
  /** An order that costs no more than this is good enough: none is cheaper. */
  readonly enough?: number | undefined;
}

/**
 * A good order of the nodes other than the depot: the cheapest next one at each step, then two neighbouring stretches
 * exchanged as long as that gains (a 3-exchange that turns no stretch round, since the way back costs otherwise), shaken
 * and tried again. Always the same for the same problem. Undefined where the steps so chosen run into a forbidden one
 * and no exchange leads out of it.
 */
export function goodOrder(
  problem: Problem,
  { shakes = SHAKES, work = WORK, enough = Number.NEGATIVE_INFINITY }: Effort = {},
): { readonly order: readonly number[]; readonly cost: number } | undefined {
  const search = new Search(problem);
  let best = search.descend(greedy(problem, search.cost));
  let bestCost = search.costOf(best);
  const random = xoroshiro128plus(problem.size);
  for (let shake = 0; shake < shakes && search.work < work && best.length > 3 && bestCost > enough; shake++) {
    const tried = search.descend(shaken(best, problem, () => uniformInt(random, 0, best.length - 1)));
    const cost = search.costOf(tried);
    if (cost < bestCost || (cost === bestCost && shake % 2 === 0)) [best, bestCost] = [tried, cost];
  }
  const cost = tourCost(problem, best);
  return Number.isFinite(cost) ? { order: best, cost } : undefined;
}

/** An order led down to where no exchange of neighbouring stretches gains any more. */
export const descended = (problem: Problem, order: readonly number[]): readonly number[] =>
  new Search(problem).descend(order);

/** From the depot always to the cheapest node that may come next. */
function greedy({ before, depot, size }: Problem, cost: readonly Float64Array[]): number[] {
  const waiting = before.map((all) => all.size);
  const left = new Set<number>();
  for (let node = 0; node < size; node++) if (node !== depot) left.add(node);
  const order: number[] = [];
  let last = depot;
  while (left.size > 0) {
    let next = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const node of left) {
      if ((waiting[node] ?? 0) > 0) continue;
      const step = cost[last]?.[node] ?? Number.POSITIVE_INFINITY;
      if (step < least || next < 0) [next, least] = [node, step];
    }
    left.delete(next);
    order.push(next);
    for (const node of left) if (before[node]?.has(next)) waiting[node] = (waiting[node] ?? 0) - 1;
    last = next;
  }
  return order;
}

/** Two neighbouring stretches exchanged at random, where that is allowed. */
function shaken(order: readonly number[], problem: Problem, draw: () => number): number[] {
  for (let attempt = 0; attempt < 50; attempt++) {
    const [i, j, k] = [draw(), draw(), draw()].sort((a, b) => a - b) as [number, number, number];
    if (i < j && j <= k && mayExchange(order, i, j, k + 1, problem)) return exchanged(order, i, j, k + 1);
  }
  return [...order];
}

const exchanged = (order: readonly number[], i: number, j: number, k: number): number[] => [
  ...order.slice(0, i),
  ...order.slice(j, k),
  ...order.slice(i, j),
  ...order.slice(k),
];

/** No node of the second stretch has to come after one of the first. */
function mayExchange(order: readonly number[], i: number, j: number, k: number, { before }: Problem): boolean {
  for (let b = j; b < k; b++)
    for (let a = i; a < j; a++) if (before[order[b] as number]?.has(order[a] as number)) return false;
  return true;
}

class Search {
  /** Costs with forbidden steps dear instead of infinite, so that an order can be led out of one. */
  readonly cost: readonly Float64Array[];
  work = 0;
  private readonly restrained: boolean;

  constructor(private readonly problem: Problem) {
    let most = 1;
    for (const row of problem.cost)
      for (const one of row) if (Number.isFinite(one)) most = Math.max(most, Math.abs(one));
    const dear = most * 4 * problem.size;
    this.cost = problem.cost.map((row) => Float64Array.from(row, (one) => (Number.isFinite(one) ? one : dear)));
    this.restrained = problem.before.some((all) => all.size > 0);
  }

  costOf(order: readonly number[]): number {
    const { depot } = this.problem;
    let sum = 0;
    let last = depot;
    for (const node of order) {
      sum += this.step(last, node);
      last = node;
    }
    return sum + this.step(last, depot);
  }

  /** Exchanges neighbouring stretches as long as one gains; the best exchange at each place is taken. */
  descend(start: readonly number[]): number[] {
    const order = [...start];
    for (let gained = true; gained; ) {
      gained = false;
      for (let i = 0; i < order.length - 1; i++) if (this.exchangeAt(order, i)) gained = true;
    }
    return order;
  }

  private exchangeAt(order: number[], i: number): boolean {
    const { depot, before } = this.problem;
    const n = order.length;
    const from = i === 0 ? depot : (order[i - 1] as number);
    const first = order[i] as number;
    const cut = this.step(from, first);
    let [best, bestJ, bestK] = [-1e-9, 0, 0];
    for (let j = i + 1; j < n; j++) {
      const lastOfFirst = order[j - 1] as number;
      const head = order[j] as number;
      const fixed = this.step(from, head) - cut - this.step(lastOfFirst, head);
      for (let k = j + 1; k <= n; k++) {
        this.work++;
        const tail = order[k - 1] as number;
        if (this.restrained && hindered(order, i, j, before[tail])) break;
        const next = k === n ? depot : (order[k] as number);
        const gain = fixed + this.step(tail, first) + this.step(lastOfFirst, next) - this.step(tail, next);
        if (gain < best) [best, bestJ, bestK] = [gain, j, k];
      }
    }
    if (bestK === 0) return false;
    const moved = exchanged(order, i, bestJ, bestK);
    for (let at = 0; at < n; at++) order[at] = moved[at] as number;
    return true;
  }

  private step(i: number, j: number): number {
    return (this.cost[i] as Float64Array)[j] as number;
  }
}

/** Whether a node that must come before lies in the stretch that would be put behind. */
function hindered(order: readonly number[], i: number, j: number, before: ReadonlySet<number> | undefined): boolean {
  if (!before || before.size === 0) return false;
  for (let at = i; at < j; at++) if (before.has(order[at] as number)) return true;
  return false;
}
