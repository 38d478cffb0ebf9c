import type { Problem } from './problem.js';

/** Arcs that a fractional tour uses, and how much. */
export interface Flowing {
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly flow: readonly number[];
}

/** A set of nodes that every order must leave, for nodes outside `removed`. */
export interface Cut {
  readonly inside: ReadonlySet<number>;
  readonly removed: ReadonlySet<number>;
}

/** A cut that lacks less than this is let be. */
const LACKS = 1e-4;

/**
 * Cuts that a fractional tour breaks. From each node the way back to the depot leads past none of the nodes that come
 * before it, since these have been visited; the way out from the depot to it past none of those that come after it; and
 * between two of which one comes first, past neither. So at least one must flow on each such way without those nodes
 * (predecessor and successor inequalities of Balas, Fischetti and Pulleyblank 1995, in their weak form, found by least
 * cuts); without precedences these are the subtour cuts of Dantzig, Fulkerson and Johnson (1954).
 */
export function brokenCuts(problem: Problem, flowing: Flowing): readonly Cut[] {
  const { before, after, depot, size } = problem;
  const found = new Map<string, Cut>();
  const look = (source: number, sink: number, removed: ReadonlySet<number>): void => {
    const inside = leastCut(size, flowing, source, sink, removed);
    if (!inside) return;
    const key = `${[...inside].sort((a, b) => a - b).join(' ')}|${[...removed].sort((a, b) => a - b).join(' ')}`;
    found.set(key, { inside, removed });
  };
  for (let node = 0; node < size; node++) {
    if (node === depot) continue;
    const [first, later] = [before[node] ?? NONE, after[node] ?? NONE];
    look(node, depot, first);
    if (later.size > 0) look(depot, node, later);
    for (const next of later) {
      // Of two that follow each other by way of a third, the two halves are looked at.
      if ([...later].some((other) => after[other]?.has(next))) continue;
      look(node, next, new Set([...first, ...(after[next] ?? NONE), depot]));
    }
  }
  return [...found.values()];
}

const NONE: ReadonlySet<number> = new Set();

/** The nodes on the source's side of a least cut that lets less than one through; undefined if one can flow. */
function leastCut(
  size: number,
  { from, to, flow }: Flowing,
  source: number,
  sink: number,
  removed: ReadonlySet<number>,
): ReadonlySet<number> | undefined {
  const network = new Network(size);
  for (let arc = 0; arc < from.length; arc++) {
    const [i, j] = [from[arc] as number, to[arc] as number];
    if (!removed.has(i) && !removed.has(j)) network.add(i, j, flow[arc] as number);
  }
  let through = 0;
  while (through < 1 - LACKS) {
    const pushed = network.push(source, sink, 1 - through);
    if (pushed === 0) return network.reached();
    through += pushed;
  }
  return undefined;
}

/** A network in which flow is pushed along shortest ways with room left (Edmonds and Karp 1972). */
class Network {
  private readonly arcs: number[][];
  private readonly head: number[] = [];
  private readonly room: number[] = [];
  private via: Int32Array;

  constructor(private readonly size: number) {
    this.arcs = Array.from({ length: size }, () => []);
    this.via = new Int32Array(size);
  }

  add(i: number, j: number, capacity: number): void {
    this.arcs[i]?.push(this.head.length);
    this.head.push(j);
    this.room.push(capacity);
    this.arcs[j]?.push(this.head.length);
    this.head.push(i);
    this.room.push(0);
  }

  /** Pushes what one way takes, at most `most`; 0 if no way is left. */
  push(source: number, sink: number, most: number): number {
    this.via = new Int32Array(this.size).fill(-1);
    this.via[source] = -2;
    const queue = [source];
    for (let at = 0; at < queue.length && this.via[sink] === -1; at++) {
      for (const arc of this.arcs[queue[at] as number] ?? []) {
        const next = this.head[arc] as number;
        if (this.via[next] !== -1 || (this.room[arc] as number) < 1e-9) continue;
        this.via[next] = arc;
        queue.push(next);
      }
    }
    if (this.via[sink] === -1) return 0;
    let amount = most;
    for (let node = sink; node !== source; node = this.head[(this.via[node] as number) ^ 1] as number)
      amount = Math.min(amount, this.room[this.via[node] as number] as number);
    for (let node = sink; node !== source; ) {
      const arc = this.via[node] as number;
      this.room[arc] = (this.room[arc] as number) - amount;
      this.room[arc ^ 1] = (this.room[arc ^ 1] as number) + amount;
      node = this.head[arc ^ 1] as number;
    }
    return amount;
  }

  /** What the last push could still reach from its source. */
  reached(): ReadonlySet<number> {
    const inside = new Set<number>();
    this.via.forEach((arc, node) => {
      if (arc !== -1) inside.add(node);
    });
    return inside;
  }
}
