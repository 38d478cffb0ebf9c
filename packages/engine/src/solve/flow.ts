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
  const edge = ownEdge(system, forest, form);
  if (edge) return multipliers.set(edge.index, passing(edge, form.get(edge.high) as Rational));
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

/** The one edge that a form follows from: that between two planes, one of which hangs from the other, cancelling. */
function ownEdge(system: Normal, forest: Forest, form: Form): Edge | undefined {
  if (form.size !== 2) return undefined;
  const [a, b] = [...form.keys()] as [number, number];
  const child = forest.parent[a] === b ? a : forest.parent[b] === a ? b : undefined;
  const cancels = child !== undefined && (form.get(a) as Rational).add(form.get(b) as Rational).isZero();
  return cancels ? system.edges[forest.via[child] as number] : undefined;
}

const MINUS_ONE = Rational.of(-1);

/** How many times an edge counts where so much weight passes to its higher plane. */
const passing = (edge: Edge, weight: Rational): Rational =>
  edge.factor.equals(Rational.ONE) ? weight : edge.factor.equals(MINUS_ONE) ? weight.neg() : weight.div(edge.factor);

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
      addTo(multipliers, edge.index, passing(edge, edge.high === node ? weight : weight.neg()));
      const parent = forest.parent[node] as number;
      if (!weights.has(parent)) enter(parent);
      addTo(weights, parent, weight);
    }
  }
}
