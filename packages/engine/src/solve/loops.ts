import { Rational } from '../number/rational.js';
import { certificateOf, type Factored, factor } from './factor.js';
import { type Adjacency, adjacency } from './forest.js';
import type { AnyRow, Edge, Normal } from './normalise.js';
import { withRows } from './subsystem.js';

/** Equations that contradict each other, none of which can be spared. */
export type Loop = readonly AnyRow[];

/** Disagreeing equations beyond this many are not looked into: one wrong statement can break hundreds. */
const TRIED = 64;

/**
 * A loop that does not close: of those found, the one with the fewest statements, then the fewest equations,
 * then the first in the order of contents. Through edges alone the fewest equations is exact. Undefined if all
 * equations agree.
 */
export function badLoop(factored: Factored): Loop | undefined {
  const { system, bad } = factored;
  let best: Loop | undefined;
  const offer = (loop: Loop | undefined) => {
    if (loop && (!best || shorter(loop, best))) best = loop;
  };
  const edgesAt = adjacency(system.count, system.edges);
  let longest = Number.POSITIVE_INFINITY;
  for (const row of bad.slice(0, TRIED)) {
    if (row.kind === 'edge') {
      const loop = shortestLoop(system, edgesAt, row, longest);
      if (loop) longest = Math.min(longest, loop.length);
      offer(loop);
    } else {
      const members = new Set(certificateOf(factored, row).keys()).add(row.index);
      offer([...system.edges, ...system.generals, ...system.empties].filter(({ index }) => members.has(index)));
    }
  }
  return best;
}

/** Statements of a loop, each once, in the order of the loop. */
export function statementsOf(loop: Loop): readonly string[] {
  return [...new Set(loop.map((row) => row.statement))];
}

/**
 * How many times each equation of a loop counts so that their left sides cancel, by index, and what their right
 * sides then come to.
 */
export function closing(system: Normal, loop: Loop): { multipliers: ReadonlyMap<number, Rational>; rest: Rational } {
  const members = new Set(loop.map((row) => row.index));
  const factored = factor(withRows(system, (row) => members.has(row.index)));
  const multipliers = new Map<number, Rational>();
  const [last] = factored.bad;
  if (last) {
    for (const [index, k] of certificateOf(factored, last)) multipliers.set(index, k.neg());
    multipliers.set(last.index, Rational.ONE);
  }
  const rest = Rational.sum(
    loop.map((row) => {
      const value = row.kind === 'edge' ? row.offset.mul(row.factor) : row.value;
      return value.mul(multipliers.get(row.index) ?? Rational.ZERO);
    }),
  );
  return { multipliers, rest };
}

function shorter(a: Loop, b: Loop): boolean {
  return (statementsOf(a).length - statementsOf(b).length || a.length - b.length) < 0;
}

/**
 * The shortest loop of edges through `bad` that does not close, or a shorter one met on the way; undefined if
 * it would be longer than `longest`. Breadth-first over planes together with the offset they were reached with:
 * the other way round the loop must arrive with another offset than `bad` states, so each plane may have to be
 * reached in two ways.
 */
function shortestLoop(system: Normal, at: Adjacency, bad: Edge, longest: number): Loop | undefined {
  const node: number[] = [bad.low];
  const offset: Rational[] = [Rational.ZERO];
  const from: number[] = [-1];
  const via: (Edge | undefined)[] = [undefined];
  const steps: number[] = [0];
  const first = new Map<number, number>([[bad.low, 0]]);
  const second = new Set<number>();
  for (let i = 0; i < node.length; i++) {
    if ((steps[i] as number) + 2 > longest) return undefined;
    const here = node[i] as number;
    const here0 = offset[i] as Rational;
    for (let j = at.start[here] as number; j < (at.start[here + 1] as number); j++) {
      const edge = system.edges[at.edge[j] as number] as Edge;
      if (edge === bad || edge === via[i]) continue;
      const up = edge.low === here;
      const next = up ? edge.high : edge.low;
      const there = up ? here0.add(edge.offset) : here0.sub(edge.offset);
      const known = first.get(next);
      if (known !== undefined) {
        if (second.has(next) || (offset[known] as Rational).equals(there)) continue;
        second.add(next);
      } else first.set(next, node.length);
      node.push(next);
      offset.push(there);
      from.push(i);
      via.push(edge);
      steps.push((steps[i] as number) + 1);
      if (next === bad.high && !there.equals(bad.offset)) return closedPart(node, from, via, bad);
    }
  }
  return undefined;
}

/** The walk that ends at the last state, closed by `bad`; or the part of it between two visits to one plane. */
function closedPart(
  node: readonly number[],
  from: readonly number[],
  via: readonly (Edge | undefined)[],
  bad: Edge,
): Loop {
  const walk: number[] = [];
  for (let i = node.length - 1; i !== -1; i = from[i] as number) walk.push(i);
  const seen = new Map<number, number>();
  for (let end = 0; end < walk.length; end++) {
    const plane = node[walk[end] as number] as number;
    const start = seen.get(plane);
    // The two visits have different offsets, so what lies between does not close either.
    if (start !== undefined) return edgesBetween(walk, via, start, end);
    seen.set(plane, end);
  }
  return [bad, ...edgesBetween(walk, via, 0, walk.length - 1)];
}

function edgesBetween(walk: readonly number[], via: readonly (Edge | undefined)[], start: number, end: number): Edge[] {
  return walk.slice(start, end).map((i) => via[i] as Edge);
}
