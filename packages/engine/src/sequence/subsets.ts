import type { Problem } from './problem.js';

/** More nodes than this do not fit the bits of a set. */
export const MOST_NODES = 26;
/** States kept in all unless fewer are asked for; beyond it the search is given up. */
const MOST_STATES = 3_000_000;

/**
 * The cheapest order by dynamic programming over the sets of nodes visited (Held and Karp 1962), sets that break a
 * precedence left out. `below`: an order of this cost is known, so states that cannot do better are dropped. Undefined
 * where the sets become too many, or no order is cheaper than `below`.
 */
export function cheapestBySets(
  problem: Problem,
  below: number,
  mostStates = MOST_STATES,
): { readonly order: readonly number[]; readonly cost: number } | 'none' | 'too many' {
  const { before, cost, depot, size } = problem;
  const nodes = Array.from({ length: size }, (_, node) => node).filter((node) => node !== depot);
  if (nodes.length > MOST_NODES) return 'too many';
  const count = nodes.length;
  const bit = new Map(nodes.map((node, i): [number, number] => [node, 1 << i]));
  const needs = nodes.map((node) => [...(before[node] ?? [])].reduce((mask, one) => mask | (bit.get(one) ?? 0), 0));
  const step = (i: number, j: number): number => cost[i]?.[j] ?? Number.POSITIVE_INFINITY;
  const between = nodes.map((i) => nodes.map((j) => step(i, j)));
  const least = nodes.map((j) => Math.min(step(depot, j), ...nodes.map((i) => step(i, j))));
  const leastHome = Math.min(...nodes.map((i) => step(i, depot)));
  // Layer by layer, a set's costs stand in a row, one for each node that may come last.
  let layer = new Map<number, Float64Array>([[0, new Float64Array(0)]]);
  const layers: Map<number, Float64Array>[] = [];
  let states = 0;
  for (let visited = 0; visited < count; visited++) {
    const next = new Map<number, Float64Array>();
    for (const [set, costs] of layer) {
      for (let j = 0; j < count; j++) {
        if ((set & (1 << j)) !== 0 || ((needs[j] as number) & ~set) !== 0) continue;
        let reached = visited === 0 ? step(depot, nodes[j] as number) : Number.POSITIVE_INFINITY;
        for (let i = 0; i < costs.length; i++) {
          const sum = (costs[i] as number) + ((between[i] as number[])[j] as number);
          if (sum < reached) reached = sum;
        }
        if (reached + rest(set | (1 << j), least) + leastHome >= below) continue;
        const to = set | (1 << j);
        let row = next.get(to);
        if (!row) {
          row = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
          next.set(to, row);
          states += count;
          if (states > mostStates) return 'too many';
        }
        if (reached < (row[j] as number)) row[j] = reached;
      }
    }
    layers.push(next);
    layer = next;
  }
  return tracedBack(layers, between, (i) => step(nodes[i] as number, depot), nodes, below);
}

/** At least what the nodes not yet visited cost. */
function rest(set: number, least: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < least.length; j++) if ((set & (1 << j)) === 0) sum += least[j] as number;
  return sum;
}

function tracedBack(
  layers: readonly Map<number, Float64Array>[],
  between: readonly (readonly number[])[],
  home: (i: number) => number,
  nodes: readonly number[],
  below: number,
): { readonly order: readonly number[]; readonly cost: number } | 'none' {
  const full = nodes.length === 0 ? 0 : (1 << nodes.length) - 1;
  let [best, last] = [below, -1];
  const ends = layers[nodes.length - 1]?.get(full);
  ends?.forEach((sum, i) => {
    if (sum + home(i) < best) [best, last] = [sum + home(i), i];
  });
  if (last < 0) return 'none';
  const order: number[] = [];
  let set = full;
  for (let at = nodes.length - 1; at >= 0; at--) {
    order.unshift(nodes[last] as number);
    const reached = layers[at]?.get(set)?.[last] as number;
    set &= ~(1 << last);
    const costs = layers[at - 1]?.get(set);
    let previous = -1;
    let least = Number.POSITIVE_INFINITY;
    costs?.forEach((sum, i) => {
      const off = Math.abs(sum + ((between[i] as number[])[last] as number) - reached);
      if (off < least) [least, previous] = [off, i];
    });
    last = previous;
  }
  return { order, cost: best };
}
