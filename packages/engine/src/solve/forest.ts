import { Rational } from '../number/rational.js';
import type { Edge, Normal } from './normalise.js';

/**
 * A spanning forest of the planes over the edges. Every node has a place: root + offset. A node without edges
 * is a root alone.
 */
export interface Forest {
  readonly root: Int32Array;
  /** −1 at a root. */
  readonly parent: Int32Array;
  /** Place in the system's edges of the edge to the parent; −1 at a root. */
  readonly via: Int32Array;
  readonly depth: Int32Array;
  readonly offset: readonly Rational[];
  /** Number of planes hanging from each root, the ground not counted. */
  readonly size: Int32Array;
  /** Edges outside the forest. */
  readonly spare: readonly Edge[];
  /** Those of them that disagree with it. */
  readonly bad: readonly Edge[];
}

/**
 * Grows trees breadth-first, so that reasons are short, each from the plane that most edges meet at. Facts
 * that nobody wrote (thicknesses) are taken into a tree as soon as it touches them: if anything is left out
 * and disagrees, it is something written.
 */
export function growForest(system: Normal): Forest {
  const { count, edges } = system;
  const at = adjacency(count, edges);
  const root = new Int32Array(count).fill(-1);
  const parent = new Int32Array(count).fill(-1);
  const via = new Int32Array(count).fill(-1);
  const depth = new Int32Array(count);
  const size = new Int32Array(count);
  const offset = new Array<Rational>(count).fill(Rational.ZERO);
  const queue = new Int32Array(count);
  let tail = 0;

  const place = (node: number, from: number, edgeAt: number) => {
    const edge = edges[edgeAt] as Edge;
    const start = offset[from] as Rational;
    offset[node] = edge.offset.isZero() ? start : edge.high === node ? start.add(edge.offset) : start.sub(edge.offset);
    root[node] = root[from] as number;
    parent[node] = from;
    via[node] = edgeAt;
    depth[node] = (depth[from] as number) + 1;
    queue[tail++] = node;
  };
  const spread = (node: number, all: boolean) => {
    const end = at.start[node + 1] as number;
    for (let i = at.start[node] as number; i < end; i++) {
      const edgeAt = at.edge[i] as number;
      const edge = edges[edgeAt] as Edge;
      if (!all && edge.written) continue;
      const other = edge.high === node ? edge.low : edge.high;
      if (root[other] !== -1) continue;
      const first = tail;
      place(other, node, edgeAt);
      if (all) for (let j = first; j < tail; j++) spread(queue[j] as number, false);
    }
  };
  for (const start of byDegree(system, at.start)) {
    if (root[start] !== -1) continue;
    let head = tail;
    root[start] = start;
    queue[tail++] = start;
    for (let j = head; j < tail; j++) spread(queue[j] as number, false);
    while (head < tail) spread(queue[head++] as number, true);
  }
  for (let node = 0; node < count - 3; node++) if (system.plane[node]) bump(size, root[node] as number);

  const spare = edges.filter((edge, i) => via[edge.high] !== i && via[edge.low] !== i);
  const closes = (edge: Edge) => (offset[edge.low] as Rational).add(edge.offset).equals(offset[edge.high] as Rational);
  return { root, parent, via, depth, offset, size, spare, bad: spare.filter((edge) => !closes(edge)) };
}

/** Edges at each node, in the order of the list: those of node i stand at start[i] up to start[i + 1]. */
export interface Adjacency {
  readonly start: Int32Array;
  readonly edge: Int32Array;
}

export function adjacency(count: number, edges: readonly Edge[]): Adjacency {
  const start = new Int32Array(count + 1);
  for (const { high, low } of edges) {
    bump(start, high + 1);
    bump(start, low + 1);
  }
  for (let i = 0; i < count; i++) bump(start, i + 1, start[i]);
  const next = start.slice(0, count);
  const edge = new Int32Array(2 * edges.length);
  edges.forEach(({ high, low }, i) => {
    edge[bump(next, high)] = i;
    edge[bump(next, low)] = i;
  });
  return { start, edge };
}

/** Nodes with most edges first, then in the order of ranks. */
function byDegree(system: Normal, start: Int32Array): Int32Array {
  const degree = (node: number) => (start[node + 1] as number) - (start[node] as number);
  const most = system.byRank.reduce((max, node) => Math.max(max, degree(node)), 0);
  const next = new Int32Array(most + 2);
  for (const node of system.byRank) bump(next, most - degree(node) + 1);
  for (let i = 1; i < next.length; i++) bump(next, i, next[i - 1]);
  const sorted = new Int32Array(system.count);
  for (const node of system.byRank) sorted[bump(next, most - degree(node))] = node;
  return sorted;
}

/** Adds to a counter and gives what it was before. */
function bump(counters: Int32Array, at: number, by = 1): number {
  const before = counters[at] as number;
  counters[at] = before + by;
  return before;
}
