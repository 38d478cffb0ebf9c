/** An order sought, brought to one form: a closed tour from a depot, with what must come before what. */
export interface Problem {
  /** Nodes of the tour, the depot among them. */
  readonly size: number;
  readonly depot: number;
  /** `cost[i][j]`: going from node i to node j; infinite where j cannot follow i at once. */
  readonly cost: readonly (readonly number[])[];
  /** `before[j]`: the nodes that must be visited before j, however far; the depot is in none. */
  readonly before: readonly ReadonlySet<number>[];
  /** `after[i]`: the nodes that must be visited after i. */
  readonly after: readonly ReadonlySet<number>[];
  /** True where every finite cost is a whole number, so that costs differ by one at least. */
  readonly whole: boolean;
}

/** A pair of set-ups: the first must come before the second. */
export type Precedence = readonly [before: number, after: number];

/**
 * Brings a matrix to a tour. A path gets a depot of its own at its end, free to leave from and to come back to; a closed
 * tour starts at 0, and precedences are read from there.
 * @throws RangeError when the matrix is not square, a cost is no number, a precedence names what is not there, or the
 *   precedences run in a circle.
 */
export function problemOf(
  matrix: readonly (readonly number[])[],
  precedences: readonly Precedence[],
  cyclic: boolean,
): Problem {
  const count = matrix.length;
  matrix.forEach((row, i) => {
    if (row.length !== count)
      throw new RangeError(`row ${i} of the costs has ${row.length} entries, and there are ${count} set-ups`);
    row.forEach((cost, j) => {
      if (i !== j && (Number.isNaN(cost) || cost === Number.NEGATIVE_INFINITY))
        throw new RangeError(`the cost from ${i} to ${j} is ${cost}; write a number, or Infinity where it cannot be`);
    });
  });
  const size = cyclic ? count : count + 1;
  const depot = cyclic ? 0 : count;
  const after = closure(precedences, count, cyclic ? 0 : undefined);
  const before = transposed(after, size);
  const cost = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_unused, j) => {
      if (i === j) return Number.POSITIVE_INFINITY;
      if (follows(i, j, before, after, depot))
        return i === depot && !cyclic ? 0 : j === depot && !cyclic ? 0 : at(matrix, i, j);
      return Number.POSITIVE_INFINITY;
    }),
  );
  const whole = cost.every((row) => row.every((entry) => !Number.isFinite(entry) || Number.isInteger(entry)));
  return { size, depot, cost, before, after: padded(after, size), whole };
}

const at = (matrix: readonly (readonly number[])[], i: number, j: number): number =>
  matrix[i]?.[j] ?? Number.POSITIVE_INFINITY;

/** Whether j can come right after i: nothing has to come between them, and j need not come before i. */
function follows(
  i: number,
  j: number,
  before: readonly ReadonlySet<number>[],
  after: readonly ReadonlySet<number>[],
  depot: number,
): boolean {
  if (i === depot) return (before[j]?.size ?? 0) === 0;
  if (j === depot) return (after[i]?.size ?? 0) === 0;
  if (before[i]?.has(j)) return false;
  const between = after[i];
  if (!between?.has(j)) return true;
  for (const k of between) if (after[k]?.has(j)) return false;
  return true;
}

/** What must come after each, however far. */
function closure(precedences: readonly Precedence[], count: number, start: number | undefined): Set<number>[] {
  const next = Array.from({ length: count }, () => new Set<number>());
  for (const [a, b] of precedences) {
    const from = next[a];
    if (!from || !next[b]) throw new RangeError(`${a} before ${b}: there are only set-ups 0 to ${count - 1}`);
    if (b === start) throw new RangeError(`${a} before ${b}: a closed tour starts at ${start}`);
    // Everything comes after the start of a closed tour as it is.
    if (a !== start) from.add(b);
  }
  const state = new Array<'new' | 'open' | 'done'>(count).fill('new');
  const all = Array.from({ length: count }, () => new Set<number>());
  const visit = (root: number): void => {
    const stack: { readonly node: number; readonly rest: number[] }[] = [{ node: root, rest: [...(next[root] ?? [])] }];
    state[root] = 'open';
    while (stack.length > 0) {
      const top = stack[stack.length - 1];
      if (!top) return;
      const child = top.rest.pop();
      if (child !== undefined) {
        if (state[child] === 'open')
          throw new RangeError(
            circle(
              stack.map(({ node }) => node),
              child,
            ),
          );
        if (state[child] === 'new') {
          state[child] = 'open';
          stack.push({ node: child, rest: [...(next[child] ?? [])] });
        }
        continue;
      }
      stack.pop();
      state[top.node] = 'done';
      const reached = all[top.node];
      for (const one of next[top.node] ?? []) {
        reached?.add(one);
        for (const far of all[one] ?? []) reached?.add(far);
      }
    }
  };
  for (let node = 0; node < count; node++) if (state[node] === 'new') visit(node);
  return all;
}

function circle(open: readonly number[], back: number): string {
  const ring = [...open.slice(open.indexOf(back)), back];
  return `what must come first runs in a circle: ${ring.join(' before ')}`;
}

function transposed(after: readonly ReadonlySet<number>[], size: number): Set<number>[] {
  const before = Array.from({ length: size }, () => new Set<number>());
  after.forEach((all, i) => {
    for (const j of all) before[j]?.add(i);
  });
  return before;
}

const padded = (sets: readonly ReadonlySet<number>[], size: number): readonly ReadonlySet<number>[] =>
  Array.from({ length: size }, (_, i) => sets[i] ?? new Set<number>());

/** What an order of the nodes other than the depot costs as a tour from the depot and back. */
export function tourCost({ cost, depot }: Problem, order: readonly number[]): number {
  let sum = 0;
  let last = depot;
  for (const node of order) {
    sum += at(cost, last, node);
    last = node;
  }
  return sum + at(cost, last, depot);
}

/**
 * What no tour undercuts: each node is entered once and left once, one of them from the depot and one of them to it, all
 * others from and to each other, each at no less than the cheapest way of doing so.
 */
export function leastByArcs({ cost, depot, size }: Problem): number {
  const nodes = Array.from({ length: size }, (_, node) => node).filter((node) => node !== depot);
  const least = (step: (from: number, to: number) => number): number => {
    const cheapest = nodes.map((to) => Math.min(...nodes.map((from) => step(from, to))));
    const first = nodes.map(
      (to, i) => step(depot, to) + cheapest.reduce((sum, one, j) => (i === j ? sum : sum + one), 0),
    );
    return Math.min(...first) + Math.min(...nodes.map((from) => step(from, depot)));
  };
  return Math.max(
    least((from, to) => at(cost, from, to)),
    least((to, from) => at(cost, from, to)),
  );
}
