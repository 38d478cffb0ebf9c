import { Rational } from '../number/rational.js';
import type { Elimination } from './eliminate.js';
import type { Forest } from './forest.js';
import { addTo, type Form } from './form.js';
import type { Edge, Normal } from './normalise.js';

/**
 * Multipliers, by equation, such that Σ multiplier · equation is the form; undefined if the equations do not
 * determine it. Rows of the elimination take away what differs between trees; what is left is a weight on each
 * plane, cancelling in each tree, and is pushed towards the root, deepest first: the weight that passes an
 * edge is the edge's multiplier.
 */
export function certify(
  system: Normal,
  forest: Forest,
  elimination: Elimination,
  form: Form,
): Map<number, Rational> | undefined {
  const multipliers = new Map<number, Rational>();
  const weights: Form = new Map(form);
  const sums = elimination.onRoots(form);
  if (sums.size > 0) {
    const used = elimination.reduce(sums);
    if (sums.size > 0) return undefined;
    for (const [general, k] of elimination.trace(used)) {
      addTo(multipliers, general.index, k);
      for (const { unknown, coefficient } of general.terms) addTo(weights, unknown, coefficient.mul(k).neg());
    }
  }
  push(system, forest, weights, multipliers);
  return multipliers;
}

function push(system: Normal, forest: Forest, weights: Form, multipliers: Map<number, Rational>): void {
  const levels: number[][] = [];
  const enter = (node: number) => {
    const depth = forest.depth[node] as number;
    while (levels.length <= depth) levels.push([]);
    levels[depth]?.push(node);
  };
  for (const node of weights.keys()) enter(node);
  for (let depth = levels.length - 1; depth > 0; depth--) {
    for (const node of levels[depth] as number[]) {
      const weight = weights.get(node);
      if (!weight) continue;
      weights.delete(node);
      const edge = system.edges[forest.via[node] as number] as Edge;
      const passes = edge.high === node ? weight : weight.neg();
      addTo(multipliers, edge.index, edge.factor.equals(Rational.ONE) ? passes : passes.div(edge.factor));
      const parent = forest.parent[node] as number;
      if (!weights.has(parent)) enter(parent);
      addTo(weights, parent, weight);
    }
  }
}
