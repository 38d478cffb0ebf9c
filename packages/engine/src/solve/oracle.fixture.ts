import Fraction from 'fraction.js';
import type { Rational } from '../number/rational.js';
import type { Equation, LinearSystem, LinearTerm } from './types.js';

/** Full Gauss–Jordan elimination of all equations at once, in an independent library's fractions. */
export class Oracle {
  private readonly rows: { pivot: number; form: Map<number, Fraction>; value: Fraction }[] = [];
  /** Whether some values satisfy every equation. */
  readonly agrees: boolean;

  constructor(equations: readonly Pick<Equation, 'terms' | 'value'>[]) {
    let agrees = true;
    for (const { terms, value } of equations) {
      const { form, value: rest } = this.reduce(terms, fraction(value.value));
      const [pivot] = form.keys();
      if (pivot === undefined) {
        if (!rest.equals(0)) agrees = false;
        continue;
      }
      const scale = form.get(pivot) as Fraction;
      const row = { pivot, form: new Map([...form].map(([i, k]) => [i, k.div(scale)])), value: rest.div(scale) };
      for (const other of this.rows) other.value = other.value.sub(row.value.mul(cancel(other.form, row.form, pivot)));
      this.rows.push(row);
    }
    this.agrees = agrees;
  }

  /** Value of a linear form as 'n/d'; undefined if the equations leave it open. */
  valueOf(terms: readonly LinearTerm[]): string | undefined {
    const { form, value } = this.reduce(terms, new Fraction(0));
    return form.size === 0 ? text(value.neg()) : undefined;
  }

  /** Number of independent equations. */
  get rank(): number {
    return this.rows.length;
  }

  private reduce(terms: readonly LinearTerm[], value: Fraction): { form: Map<number, Fraction>; value: Fraction } {
    const form = new Map<number, Fraction>();
    for (const { unknown, coefficient } of terms) {
      const sum = (form.get(unknown) ?? new Fraction(0)).add(fraction(coefficient));
      if (sum.equals(0)) form.delete(unknown);
      else form.set(unknown, sum);
    }
    let rest = value;
    for (const row of this.rows) rest = rest.sub(row.value.mul(cancel(form, row.form, row.pivot)));
    return { form, value: rest };
  }
}

/** Takes the pivot out of a form; returns how many times the row was taken. */
function cancel(form: Map<number, Fraction>, row: Map<number, Fraction>, pivot: number): Fraction {
  const k = form.get(pivot);
  if (!k) return new Fraction(0);
  for (const [i, coefficient] of row) {
    const sum = (form.get(i) ?? new Fraction(0)).sub(coefficient.mul(k));
    if (sum.equals(0)) form.delete(i);
    else form.set(i, sum);
  }
  return k;
}

/** The equations of some statements. */
export function ofStatements(system: LinearSystem, statements: readonly string[]): readonly Equation[] {
  return system.equations.filter((equation) => statements.includes(equation.statement));
}

export function agree(system: LinearSystem, statements: readonly string[]): boolean {
  return new Oracle(ofStatements(system, statements)).agrees;
}

/** Size of the smallest set of statements that disagrees, by trying all sets, small ones first. */
export function smallestDisagreement(system: LinearSystem): number | undefined {
  const all = [...new Set(system.equations.map((equation) => equation.statement))];
  for (let size = 1; size <= all.length; size++) {
    for (const set of subsets(all, size)) if (!agree(system, set)) return size;
  }
  return undefined;
}

export function* subsets<T>(items: readonly T[], size: number): Generator<readonly T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = 0; i + size <= items.length; i++) {
    for (const rest of subsets(items.slice(i + 1), size - 1)) yield [items[i] as T, ...rest];
  }
}

function fraction(r: Rational): Fraction {
  return new Fraction(r.numerator, r.denominator);
}

function text(f: Fraction): string {
  return f.d === 1n ? `${f.s * f.n}` : `${f.s * f.n}/${f.d}`;
}
