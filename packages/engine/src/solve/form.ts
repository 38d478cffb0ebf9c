import type { Rational } from '../number/rational.js';
import type { LinearTerm } from './types.js';

/** A linear form: its coefficient of each node, none zero. */
export type Form = Map<number, Rational>;

export function formOf(terms: readonly LinearTerm[]): Form {
  const form: Form = new Map();
  for (const { unknown, coefficient } of terms) addTo(form, unknown, coefficient);
  return form;
}

export function addTo(form: Form, node: number, coefficient: Rational): void {
  const before = form.get(node);
  const sum = before ? before.add(coefficient) : coefficient;
  if (sum.isZero()) form.delete(node);
  else form.set(node, sum);
}

/** form += k · other. */
export function addForm(form: Form, other: Iterable<readonly [number, Rational]>, k: Rational): void {
  for (const [node, coefficient] of other) addTo(form, node, coefficient.mul(k));
}
