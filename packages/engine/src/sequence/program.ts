import type { Highs, Model } from 'highs';
import { brokenCuts } from './cuts.js';
import { descended, goodOrder } from './improve.js';
import { type Problem, tourCost } from './problem.js';

/** What is known of the best order. */
export interface Known {
  readonly order: readonly number[] | undefined;
  /** Cost of that order; infinite while there is none. */
  readonly cost: number;
  /** No order is cheaper. */
  readonly lowerBound: number;
}

/** What closing in came to. */
export interface Closed extends Known {
  /** The time was up before it was done. */
  readonly stopped: boolean;
}

/** Shakings of an order led by a fractional one. */
const LED = 20;
/** Elementary comparisons in which an order is made better by shaking before whole numbers are asked for, a millisecond. */
const WORK_A_MS = 10_000;
/** Costs nearer than this are equal. */
const NEAR = 1e-6;

/**
 * Closes in on the best order by linear programs: each node is left once and entered once at least cost; ways that no
 * order takes are cut off as they come up; arcs too dear for the best order known are struck out; and what is left is
 * solved in whole numbers, until the bound meets the order or the time is up. The time is the solver's own.
 * @param below what another order costs already: none is sought that is not cheaper, so that the bound ends there
 */
export function closeIn(
  highs: Highs,
  problem: Problem,
  start: Known,
  limitMs: number,
  below = Number.POSITIVE_INFINITY,
): Closed {
  const model = highs.createModel();
  try {
    return new Program(highs, model, problem, start, limitMs, below).solve();
  } finally {
    model.dispose();
  }
}

class Program {
  private readonly from: number[] = [];
  private readonly to: number[] = [];
  private readonly price: number[] = [];
  private open: boolean[] = [];
  private readonly into: number[][];
  private spent = 0;
  private order: readonly number[] | undefined;
  private cost: number;
  private bound: number;
  private stopped = false;

  constructor(
    private readonly highs: Highs,
    private readonly model: Model,
    private readonly problem: Problem,
    start: Known,
    private readonly limitMs: number,
    private readonly below: number,
  ) {
    [this.order, this.cost, this.bound] = [start.order, start.cost, start.lowerBound];
    this.into = Array.from({ length: problem.size }, () => []);
    problem.cost.forEach((row, i) => {
      row.forEach((cost, j) => {
        if (!Number.isFinite(cost)) return;
        this.into[i]?.push(this.from.length);
        this.from.push(i);
        this.to.push(j);
        this.price.push(cost);
      });
    });
    this.open = this.from.map(() => true);
  }

  solve(): Closed {
    this.build();
    if (this.relax() && !this.isClosed()) {
      // What the linear programs leave open an order shaken longer often closes, and each gain strikes out arcs.
      this.take(goodOrder(this.problem, { work: WORK_A_MS * this.limitMs, enough: this.bound })?.order);
      if (this.relax() && !this.isClosed()) this.inWholeNumbers();
    }
    const lowerBound = Math.min(this.bound, this.cost);
    return { order: this.order, cost: this.cost, lowerBound, stopped: this.stopped && !this.isClosed() };
  }

  /** What an order has to cost less than to be of any use. */
  private get most(): number {
    return Math.min(this.cost, this.below);
  }

  /** One column an arc, one row for leaving and one for entering each node. */
  private build(): void {
    const { size } = this.problem;
    const count = this.from.length;
    const starts = Int32Array.from({ length: count + 1 }, (_, i) => 2 * i);
    const indices = new Int32Array(2 * count);
    for (let arc = 0; arc < count; arc++) {
      indices[2 * arc] = this.from[arc] as number;
      indices[2 * arc + 1] = size + (this.to[arc] as number);
    }
    this.model.options.set({ output_flag: false, mip_rel_gap: 0, random_seed: 1 });
    this.model.passModel({
      numCols: count,
      numRows: 2 * size,
      colCost: Float64Array.from(this.price),
      colLower: new Float64Array(count),
      colUpper: new Float64Array(count).fill(1),
      rowLower: new Float64Array(2 * size).fill(1),
      rowUpper: new Float64Array(2 * size).fill(1),
      matrix: {
        format: 'csc',
        numRows: 2 * size,
        numCols: count,
        starts,
        indices,
        values: new Float64Array(2 * count).fill(1),
      },
    });
  }

  /** Linear programs until no cut is broken. False if the time is up, or nothing satisfies them. */
  private relax(): boolean {
    for (;;) {
      const status = this.run();
      if (status === this.highs.constants.modelStatus.infeasible) {
        this.bound = Math.max(this.bound, this.most);
        return false;
      }
      if (status !== this.highs.constants.modelStatus.optimal) return false;
      const { colValue, colDual } = this.model.getSolution();
      this.raise(this.model.getObjectiveValue());
      this.guess(colValue);
      this.strike(this.model.getObjectiveValue(), colDual);
      if (this.isClosed()) return true;
      if (!this.cutOff(colValue)) return true;
    }
  }

  /** Whole numbers, and cuts against the subtours and wrong orders that come of them, until a real order comes. */
  private inWholeNumbers(): void {
    const { integer } = this.highs.constants.variableType;
    const { optimal, infeasible } = this.highs.constants.modelStatus;
    for (let arc = 0; arc < this.from.length; arc++) this.model.changeColIntegrality(arc, integer);
    while (!this.isClosed()) {
      if (Number.isFinite(this.most)) this.model.options.set('objective_bound', this.most);
      const status = this.run();
      if (status === infeasible) {
        // Only arcs too dear for a better order were struck out.
        this.bound = Math.max(this.bound, this.most);
        return;
      }
      const bound = Number(this.model.info.get('mip_dual_bound'));
      if (Number.isFinite(bound)) this.raise(bound);
      if (status !== optimal) return;
      const { colValue } = this.model.getSolution();
      this.guess(colValue);
      if (this.accept(colValue)) {
        this.raise(this.cost);
        return;
      }
      if (!this.cutOff(colValue)) return;
    }
  }

  private run(): number {
    const left = this.limitMs / 1000 - this.spent;
    if (left <= 0) {
      this.stopped = true;
      return this.highs.constants.modelStatus.timeLimit;
    }
    this.model.zeroAllClocks();
    this.model.options.set('time_limit', left);
    this.model.run();
    this.spent += this.model.getRunTime();
    const status = this.model.getModelStatus();
    if (status === this.highs.constants.modelStatus.timeLimit) this.stopped = true;
    return status;
  }

  /** No order costs less than `bound`; where all costs are whole, none costs less than the next whole number. */
  private raise(bound: number): void {
    const sure = bound - NEAR * Math.max(1, Math.abs(bound));
    this.bound = Math.max(this.bound, this.problem.whole ? Math.ceil(sure) : sure);
  }

  private isClosed(): boolean {
    return this.bound >= this.most - NEAR * Math.max(1, Math.abs(this.most));
  }

  /** Adds the cuts that a solution breaks; false if it breaks none. */
  private cutOff(values: Float64Array): boolean {
    const cuts = brokenCuts(this.problem, this.flowing(values));
    for (const cut of cuts) {
      const indices: number[] = [];
      for (const node of cut.inside)
        for (const arc of this.into[node] ?? []) {
          const to = this.to[arc] as number;
          if (!cut.inside.has(to) && !cut.removed.has(to)) indices.push(arc);
        }
      this.model.addRow(1, this.highs.infinity, { indices, values: indices.map(() => 1) });
    }
    return cuts.length > 0;
  }

  private flowing(values: Float64Array) {
    const used = [...this.from.keys()].filter((arc) => (values[arc] as number) > NEAR);
    return {
      from: used.map((arc) => this.from[arc] as number),
      to: used.map((arc) => this.to[arc] as number),
      flow: used.map((arc) => values[arc] as number),
    };
  }

  /** An order led by a fractional one: what it uses is cheap. */
  private guess(values: Float64Array): void {
    const cost = this.problem.cost.map((row) => [...row]);
    for (const arc of this.from.keys()) {
      const row = cost[this.from[arc] as number];
      const j = this.to[arc] as number;
      if (row) row[j] = (row[j] as number) * (1 - 0.9 * Math.min(1, values[arc] as number));
    }
    const led = goodOrder({ ...this.problem, cost }, { shakes: LED });
    if (led) this.take(descended(this.problem, led.order));
  }

  /** Whether a solution in whole numbers is an order. */
  private accept(values: Float64Array): boolean {
    const { depot, size, before } = this.problem;
    const next = new Int32Array(size).fill(-1);
    for (const arc of this.from.keys())
      if ((values[arc] as number) > 0.5) next[this.from[arc] as number] = this.to[arc] as number;
    const order: number[] = [];
    const seen = new Set<number>();
    for (let node = next[depot] as number; node !== depot; node = next[node] as number) {
      if (node < 0 || seen.has(node)) return false;
      for (const first of before[node] ?? []) if (!seen.has(first)) return false;
      seen.add(node);
      order.push(node);
    }
    if (order.length !== size - 1) return false;
    this.take(order);
    return true;
  }

  private take(order: readonly number[] | undefined): void {
    if (!order) return;
    const cost = tourCost(this.problem, order);
    if (cost >= this.cost) return;
    [this.order, this.cost] = [order, cost];
  }

  /** Strikes out arcs that no order better than the one known can use: bound + reduced cost tells. */
  private strike(bound: number, reduced: Float64Array): void {
    const room = this.most - bound - (this.problem.whole ? 1 - NEAR : 0) + NEAR * Math.max(1, Math.abs(bound));
    for (const arc of this.from.keys()) {
      if (!this.open[arc] || (reduced[arc] as number) <= Math.max(0, room)) continue;
      this.open[arc] = false;
      this.model.changeColBounds(arc, 0, 0);
    }
  }
}
