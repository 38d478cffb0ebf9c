import type { Rational } from '../number/rational.js';
import type { Forest } from './forest.js';
import { addForm, addTo, type Form } from './form.js';
import type { General, Normal } from './normalise.js';

/**
 * An equation between roots of trees and lengths, solved for one of them:
 * pivot + Σ rest = value, being (equation − Σ multiplier · earlier rows) / scale.
 */
interface Pivoted {
  readonly equation: General;
  readonly pivot: number;
  readonly rest: Form;
  readonly value: Rational;
  readonly scale: Rational;
  readonly used: Map<number, Rational>;
}

/**
 * Gauss elimination of the equations that are no edges, on what the forest leaves unknown. Each row keeps how
 * it was made from earlier ones, so that any combination of rows can be traced back to equations.
 */
export class Elimination {
  readonly rows: Pivoted[] = [];
  /** Equations that follow from the others, or contradict them. */
  readonly spare: General[] = [];
  /** Those that contradict them. */
  readonly bad: General[] = [];
  private readonly rowOf = new Map<number, number>();

  constructor(
    private readonly system: Pick<Normal, 'count' | 'plane' | 'rank' | 'generals'>,
    private readonly forest: Pick<Forest, 'root' | 'offset' | 'size'>,
  ) {
    for (const equation of system.generals) this.add(equation);
  }

  /** Sums a form over the planes of each tree: what it says about roots and lengths. */
  onRoots(form: Form): Form {
    const sums: Form = new Map();
    for (const [node, coefficient] of form) addTo(sums, this.forest.root[node] as number, coefficient);
    return sums;
  }

  /**
   * Takes rows off a form on roots, in place, until it names no pivot; returns how many times each was taken.
   */
  reduce(form: Form): Map<number, Rational> {
    const used = new Map<number, Rational>();
    for (;;) {
      // A row never names the pivot of an earlier one, so the first of them can be done with for good.
      let first = this.rows.length;
      for (const node of form.keys()) first = Math.min(first, this.rowOf.get(node) ?? first);
      const row = this.rows[first];
      if (!row) return used;
      const k = form.get(row.pivot) as Rational;
      form.delete(row.pivot);
      addForm(form, row.rest, k.neg());
      used.set(first, k);
    }
  }

  /** How many times each equation counts in Σ times · row. */
  trace(times: Map<number, Rational>): readonly (readonly [General, Rational])[] {
    const left = new Map(times);
    const traced: (readonly [General, Rational])[] = [];
    for (let i = left.size === 0 ? -1 : Math.max(...left.keys()); i >= 0; i--) {
      const k = left.get(i);
      const row = this.rows[i];
      if (!k || !row) continue;
      const share = k.div(row.scale);
      traced.push([row.equation, share]);
      addForm(left, row.used, share.neg());
    }
    return traced;
  }

  private add(equation: General): void {
    const sums: Form = new Map();
    let value = equation.value;
    for (const { unknown, coefficient } of equation.terms) {
      addTo(sums, this.forest.root[unknown] as number, coefficient);
      value = value.sub((this.forest.offset[unknown] as Rational).mul(coefficient));
    }
    const used = this.reduce(sums);
    for (const [i, k] of used) value = value.sub((this.rows[i] as Pivoted).value.mul(k));
    const pivot = this.choosePivot(sums);
    if (pivot === undefined) {
      this.spare.push(equation);
      if (!value.isZero()) this.bad.push(equation);
      return;
    }
    const scale = sums.get(pivot) as Rational;
    sums.delete(pivot);
    const rest: Form = new Map();
    for (const [node, coefficient] of sums) rest.set(node, coefficient.div(scale));
    this.rowOf.set(pivot, this.rows.length);
    this.rows.push({ equation, pivot, rest, value: value.div(scale), scale, used });
  }

  /** A root rather than a length, and the root of a small tree rather than of the carcase; never a ground if avoidable. */
  private choosePivot(form: Form): number | undefined {
    let best: number | undefined;
    for (const node of form.keys()) if (best === undefined || this.before(node, best)) best = node;
    return best;
  }

  private before(a: number, b: number): boolean {
    const { plane, rank, count } = this.system;
    const weight = (node: number) => (node >= count - 3 ? 2 : plane[node] ? 0 : 1);
    const order =
      weight(a) - weight(b) ||
      (this.forest.size[a] as number) - (this.forest.size[b] as number) ||
      (rank[a] as number) - (rank[b] as number);
    return order < 0;
  }
}
