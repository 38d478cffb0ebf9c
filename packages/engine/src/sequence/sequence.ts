import { goodOrder } from './improve.js';
import { leastByArcs, type Precedence, problemOf, tourCost } from './problem.js';
import { closeIn, type Known } from './program.js';
import { solver } from './solver.js';
import { cheapestBySets, MOST_NODES } from './subsets.js';

export interface SequenceOptions {
  /** Pairs: the first must come before the second. */
  readonly precedences?: readonly Precedence[];
  /** A closed tour that starts and ends at 0, instead of an open path. */
  readonly cyclic?: boolean;
  /** How long the solver may reckon, in milliseconds of its own; 10 000 unless said. */
  readonly timeLimitMs?: number;
  /** Leaves the solver out, where it cannot be loaded: orders of more than a few set-ups come with a plain bound then. */
  readonly withoutSolver?: boolean;
  /** What no order undercuts, where that is known: one that costs just as much is not bettered any more. */
  readonly atLeast?: number;
  /** What another order costs already: none is sought that is not cheaper, and the bound may end there. */
  readonly below?: number;
  /** There is no time: the first good order, with a plain bound, if they are more than a few. */
  readonly quick?: boolean;
}

export interface Sequence {
  /** The set-ups in the order they are done; empty where no order is possible. */
  readonly order: readonly number[];
  /** Sum of the changes along it, the way back included for a closed tour; infinite where no order is possible. */
  readonly cost: number;
  /** No order costs less. */
  readonly lowerBound: number;
  /** Whether the order is the cheapest there is (or none is possible): cost and bound meet. */
  readonly proven: boolean;
  /** The time was up before more could be proven. */
  readonly stopped?: boolean;
}

/** Whatever puts set-ups in order, as `sequenceSetups` does. */
export type Sequencer = (cost: readonly (readonly number[])[], options?: SequenceOptions) => Promise<Sequence>;

/** So few nodes are settled by their sets at once. */
const FEW_NODES = 11;
/** Shakings of a first order where linear programs tell soon how near it is. */
const FIRST_SHAKES = 200;
/** Sets are gone through so far before linear programs are asked, which are quicker where there are many. */
const FIRST_STATES = 300_000;

/**
 * The cheapest order of set-ups, from what it costs to change from each to each. Small ones are settled by dynamic
 * programming over subsets; larger ones by an order made better step by step and linear programs that close in on it
 * from below. What is not proven in time comes with the bound that is.
 * @param cost `cost[i][j]`: changing from i to j, ≥ 0 as a rule; Infinity where j cannot follow i at once
 * @throws RangeError when the matrix is not square, an entry is no number, or the precedences cannot be kept
 */
export async function sequenceSetups(
  cost: readonly (readonly number[])[],
  options: SequenceOptions = {},
): Promise<Sequence> {
  const { precedences = [], cyclic = false, timeLimitMs = 10_000 } = options;
  const { withoutSolver = false, quick = false } = options;
  const { atLeast = Number.NEGATIVE_INFINITY, below = Number.POSITIVE_INFINITY } = options;
  const problem = problemOf(cost, precedences, cyclic);
  if (cost.length === 0) return { order: [], cost: 0, lowerBound: 0, proven: true };
  const found = (order: readonly number[]) => (cyclic ? [0, ...order] : order);
  if (cost.length === 1) return { order: [0], cost: 0, lowerBound: 0, proven: true };
  const nodes = problem.size - 1;
  const few = nodes <= FEW_NODES;
  const shakes = quick ? 0 : withoutSolver ? undefined : FIRST_SHAKES;
  const good = few ? undefined : goodOrder(problem, { shakes, enough: atLeast });
  if (good && good.cost <= atLeast) return settled(found(good.order), good.cost);
  const start: Known = { order: good?.order, cost: good?.cost ?? Number.POSITIVE_INFINITY, lowerBound: atLeast };
  if (nodes <= (quick ? FEW_NODES : MOST_NODES)) {
    const most = few ? start.cost : Math.min(start.cost, below);
    const exact = cheapestBySets(problem, most, few || withoutSolver ? undefined : FIRST_STATES);
    if (exact === 'none' && most === start.cost) return settled(start.order && found(start.order), start.cost);
    if (exact === 'none') return bounded({ ...start, lowerBound: most });
    if (exact !== 'too many') return settled(found(exact.order), tourCost(problem, exact.order));
  }
  if (quick || withoutSolver) {
    const lowerBound = Math.max(atLeast, leastByArcs(problem));
    return bounded({ ...start, lowerBound }, quick && lowerBound < below);
  }
  const { stopped, ...closed } = closeIn(await solver(), problem, start, timeLimitMs, below);
  return bounded(closed, stopped);

  function bounded({ order, cost: reached, lowerBound }: Known, isStopped = false): Sequence {
    if (!order)
      return { order: [], cost: Number.POSITIVE_INFINITY, lowerBound, proven: lowerBound === Number.POSITIVE_INFINITY };
    const proven = lowerBound >= reached - 1e-6 * Math.max(1, Math.abs(reached));
    const stopped = isStopped && !proven ? { stopped: true } : {};
    return { order: found(order), cost: reached, lowerBound: proven ? reached : lowerBound, proven, ...stopped };
  }
}

const settled = (order: readonly number[] | undefined, cost: number): Sequence => ({
  order: order ?? [],
  cost,
  lowerBound: cost,
  proven: true,
});
