import { Rational } from '../number/rational.js';
import type { AxisNumber, Equation, LinearSystem, LinearTerm, Unknown } from './types.js';

/** What every normalised equation keeps of the one it came from. */
export interface Row {
  /** Place of the equation in the caller's list. */
  readonly index: number;
  readonly axis: AxisNumber;
  readonly statement: string;
  readonly written: boolean;
}

/** factor · (high − low = offset), between two planes of one axis. */
export interface Edge extends Row {
  readonly kind: 'edge';
  readonly high: number;
  readonly low: number;
  readonly offset: Rational;
  readonly factor: Rational;
}

/** Any other equation: terms merged, none zero, in the order of ranks. */
export interface General extends Row {
  readonly kind: 'general';
  readonly terms: readonly LinearTerm[];
  readonly value: Rational;
}

/** 0 = value. */
export interface Empty extends Row {
  readonly kind: 'empty';
  readonly value: Rational;
}

export type AnyRow = Edge | General | Empty;

/**
 * A system in normal form, its equations sorted by what they say. Nodes are the unknowns and, after them, a
 * ground for each axis, which stands in for the origin in equations that fix a plane outright: with it, the
 * coefficients of the planes of each axis cancel in every equation.
 */
export interface Normal {
  /** Number of nodes. */
  readonly count: number;
  readonly axis: Uint8Array;
  /** 1 for planes and grounds. */
  readonly plane: Uint8Array;
  /** Place of each node in the order of labels. */
  readonly rank: Int32Array;
  /** Nodes in that order. */
  readonly byRank: Int32Array;
  /** The ground of each axis that some equation refers to. */
  readonly grounds: readonly (number | undefined)[];
  readonly edges: readonly Edge[];
  readonly generals: readonly General[];
  readonly empties: readonly Empty[];
}

const MINUS_ONE = Rational.of(-1);

/** Equations that name unknowns outside the list say nothing about it and are left out. */
export function normalise({ unknowns, equations }: LinearSystem): Normal {
  const nodes = nodesOf(unknowns);
  const edges: Edge[] = [];
  const generals: General[] = [];
  const empties: Empty[] = [];
  const grounds: (number | undefined)[] = [undefined, undefined, undefined];
  equations.forEach((equation, index) => {
    const simple = simpleEdge(equation, index, nodes);
    if (simple) {
      edges.push(simple);
      return;
    }
    const row = anyRow(equation, index, nodes, unknowns.length);
    if (row === undefined) return;
    if (row.kind === 'edge') edges.push(row);
    else if (row.kind === 'general') generals.push(row);
    else empties.push(row);
    for (const { unknown } of termsOf(row)) {
      if (unknown >= unknowns.length) grounds[unknown - unknowns.length] = unknown;
    }
  });
  const { rank } = nodes;
  const last = (a: Row, b: Row) => compareSources(equations, a.index, b.index);
  generals.sort(
    (a, b) => compareTerms(a.terms, b.terms, rank) || a.value.compare(b.value) || last(a, b) || a.index - b.index,
  );
  empties.sort((a, b) => a.value.compare(b.value) || last(a, b) || a.index - b.index);
  const sortedEdges = sortEdges(edges, nodes, (a, b) => {
    return a.offset.compare(b.offset) || last(a, b) || a.factor.compare(b.factor) || a.index - b.index;
  });
  return { ...nodes, grounds, edges: sortedEdges, generals, empties };
}

/** Coefficients of an equation, as the caller wrote it but for merged terms and the ground. */
export function termsOf(row: AnyRow): readonly LinearTerm[] {
  if (row.kind === 'general') return row.terms;
  if (row.kind === 'empty') return [];
  return [
    { unknown: row.high, coefficient: row.factor },
    { unknown: row.low, coefficient: row.factor.neg() },
  ];
}

type Nodes = Pick<Normal, 'count' | 'axis' | 'plane' | 'rank' | 'byRank'>;

function nodesOf(unknowns: readonly Unknown[]): Nodes {
  const count = unknowns.length + 3;
  const axis = new Uint8Array(count);
  const plane = new Uint8Array(count).fill(1);
  unknowns.forEach((unknown, i) => {
    axis[i] = unknown.axis;
    plane[i] = unknown.plane ? 1 : 0;
  });
  for (const a of [1, 2]) axis[unknowns.length + a] = a;
  const labels = unknowns.map((unknown) => unknown.label);
  const order = labels.map((_, i) => i);
  order.sort((a, b) => compareText(labels[a] as string, labels[b] as string) || a - b);
  for (let i = unknowns.length; i < count; i++) order.push(i);
  const byRank = Int32Array.from(order);
  const rank = new Int32Array(count);
  byRank.forEach((node, i) => {
    rank[node] = i;
  });
  return { count, axis, plane, rank, byRank };
}

/** The common case without a detour: two planes of one axis with opposite coefficients. */
function simpleEdge(equation: Equation, index: number, nodes: Nodes): Edge | undefined {
  const [a, b, more] = equation.terms;
  if (!a || !b || more || a.unknown === b.unknown) return undefined;
  const limit = nodes.count - 3;
  if (!(a.unknown in nodes.plane) || !(b.unknown in nodes.plane) || a.unknown >= limit || b.unknown >= limit)
    return undefined;
  if (!nodes.plane[a.unknown] || !nodes.plane[b.unknown] || nodes.axis[a.unknown] !== nodes.axis[b.unknown])
    return undefined;
  if (!cancel(a.coefficient, b.coefficient)) return undefined;
  const upper = (nodes.rank[a.unknown] as number) > (nodes.rank[b.unknown] as number);
  return edge(equation, index, nodes, upper ? a : b, (upper ? b : a).unknown);
}

/** Nearly always one and minus one. */
const cancel = (a: Rational, b: Rational): boolean =>
  (a === Rational.ONE && b === MINUS_ONE) || (!a.isZero() && a.add(b).isZero());

function edge(equation: Equation, index: number, nodes: Nodes, high: LinearTerm, low: number): Edge {
  const { value } = equation.value;
  const factor = high.coefficient;
  const offset = factor.equals(Rational.ONE) ? value : factor.equals(MINUS_ONE) ? value.neg() : value.div(factor);
  return {
    kind: 'edge',
    index,
    axis: nodes.axis[high.unknown] as AxisNumber,
    statement: equation.statement,
    written: equation.written,
    high: high.unknown,
    low,
    offset,
    factor,
  };
}

function anyRow(equation: Equation, index: number, nodes: Nodes, unknowns: number): AnyRow | undefined {
  const exists = ({ unknown }: LinearTerm) => Number.isInteger(unknown) && unknown >= 0 && unknown < unknowns;
  if (!equation.terms.every(exists)) return undefined;
  const merged = new Map<number, Rational>();
  const add = (node: number, coefficient: Rational) =>
    merged.set(node, (merged.get(node) ?? Rational.ZERO).add(coefficient));
  for (const { unknown, coefficient } of equation.terms) {
    add(unknown, coefficient);
    if (nodes.plane[unknown]) add(unknowns + (nodes.axis[unknown] as number), coefficient.neg());
  }
  const terms: LinearTerm[] = [];
  for (const [unknown, coefficient] of merged) if (!coefficient.isZero()) terms.push({ unknown, coefficient });
  terms.sort((a, b) => (nodes.rank[a.unknown] as number) - (nodes.rank[b.unknown] as number));
  const [low, high, more] = terms;
  const first = low ?? equation.terms[0];
  const axis = (first ? nodes.axis[first.unknown] : 0) as AxisNumber;
  const { statement, written } = equation;
  const { value } = equation.value;
  if (!low) return { kind: 'empty', index, axis, statement, written, value };
  // Planes cancel on each axis, so two planes that are left lie on one axis with opposite coefficients.
  if (high && !more && nodes.plane[low.unknown] && nodes.plane[high.unknown]) {
    return edge(equation, index, nodes, high, low.unknown);
  }
  return { kind: 'general', index, axis, statement, written, terms, value };
}

/** Sorts edges by the ranks of their planes, by counting; those between the same two planes by `among`. */
function sortEdges(edges: readonly Edge[], { rank, count }: Nodes, among: (a: Edge, b: Edge) => number): Edge[] {
  const byHigh = countingSort(edges, count, (edge) => rank[edge.high] as number);
  const sorted = countingSort(byHigh, count, (edge) => rank[edge.low] as number);
  for (let start = 0; start < sorted.length; ) {
    const { low, high } = sorted[start] as Edge;
    let end = start + 1;
    while (sorted[end]?.low === low && sorted[end]?.high === high) end += 1;
    if (end > start + 1) {
      const run = sorted.slice(start, end).sort(among);
      for (let i = start; i < end; i++) sorted[i] = run[i - start] as Edge;
    }
    start = end;
  }
  return sorted;
}

/** A stable sort by a key from 0 up to `count`. */
function countingSort<T>(items: readonly T[], count: number, keyOf: (item: T) => number): T[] {
  const next = new Int32Array(count + 1);
  for (const item of items) next[keyOf(item) + 1] = (next[keyOf(item) + 1] as number) + 1;
  for (let i = 1; i < count; i++) next[i] = (next[i] as number) + (next[i - 1] as number);
  const sorted = new Array<T>(items.length);
  for (const item of items) {
    const at = next[keyOf(item)] as number;
    sorted[at] = item;
    next[keyOf(item)] = at + 1;
  }
  return sorted;
}

function compareTerms(a: readonly LinearTerm[], b: readonly LinearTerm[], rank: Int32Array): number {
  for (let i = 0; ; i++) {
    const x = a[i];
    const y = b[i];
    if (!x || !y) return a.length - b.length;
    const order = (rank[x.unknown] as number) - (rank[y.unknown] as number) || x.coefficient.compare(y.coefficient);
    if (order !== 0) return order;
  }
}

/** Orders equations that say the same by who says it. */
function compareSources(equations: readonly Equation[], a: number, b: number): number {
  const x = equations[a] as Equation;
  const y = equations[b] as Equation;
  return (
    compareText(x.statement, y.statement) ||
    compareText(x.text, y.text) ||
    Number(x.written) - Number(y.written) ||
    compareInputs(x, y)
  );
}

function compareInputs(a: Equation, b: Equation): number {
  for (let i = 0; ; i++) {
    const x = a.value.terms[i];
    const y = b.value.terms[i];
    if (!x || !y) return a.value.terms.length - b.value.terms.length;
    const order = compareText(x.input, y.input) || x.coefficient.compare(y.coefficient);
    if (order !== 0) return order;
  }
}

/** By code units, which unlike a locale's order is the same everywhere. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
