import { Rational } from './rational.js';

/** How much a quantity changes per unit change of one input fact. */
export interface Term {
  /** Id of the input: a parameter, a sheet's thickness, a toleranced literal. */
  readonly input: string;
  /** Never zero. */
  readonly coefficient: Rational;
}

/**
 * An exact value at the present inputs (mm for lengths) and its first-order dependence on them:
 * value + Σ coefficient · (change of input). For sums, differences and multiples that is the whole truth; for
 * products and quotients of two inputs it is the tangent. `terms` are sorted by input id, one per input.
 */
export interface Quantity {
  readonly value: Rational;
  readonly terms: readonly Term[];
}

/** A quantity that depends on no input. */
export function constant(value: Rational): Quantity {
  return { value, terms: [] };
}

/** The input fact itself. */
export function ofInput(id: string, value: Rational): Quantity {
  return { value, terms: [{ input: id, coefficient: Rational.ONE }] };
}

export function plus(a: Quantity, b: Quantity): Quantity {
  return { value: a.value.add(b.value), terms: combine(a.terms, Rational.ONE, b.terms, Rational.ONE) };
}

export function minus(a: Quantity, b: Quantity): Quantity {
  return { value: a.value.sub(b.value), terms: combine(a.terms, Rational.ONE, b.terms, MINUS_ONE) };
}

export function negate(a: Quantity): Quantity {
  return scale(a, MINUS_ONE);
}

/** r times a. */
export function scale(a: Quantity, r: Rational): Quantity {
  return { value: a.value.mul(r), terms: combine(a.terms, r, [], Rational.ZERO) };
}

/** a times b, with d(ab) = b·da + a·db. */
export function product(a: Quantity, b: Quantity): Quantity {
  return { value: a.value.mul(b.value), terms: combine(a.terms, b.value, b.terms, a.value) };
}

/**
 * a over b, with d(a/b) = da/b − a·db/b².
 * @throws RangeError if b's value is zero.
 */
export function quotient(a: Quantity, b: Quantity): Quantity {
  const value = a.value.div(b.value);
  return { value, terms: combine(a.terms, b.value.inverse(), b.terms, value.div(b.value).neg()) };
}

const MINUS_ONE = Rational.of(-1);

/** ka·a + kb·b, merged in the order of input ids. */
export function combine(a: readonly Term[], ka: Rational, b: readonly Term[], kb: Rational): readonly Term[] {
  if (b.length === 0 && ka.equals(Rational.ONE)) return a;
  if (a.length === 0 && kb.equals(Rational.ONE)) return b;
  const merged: Term[] = [];
  const push = (input: string, coefficient: Rational) => {
    if (!coefficient.isZero()) merged.push({ input, coefficient });
  };
  let i = 0;
  let j = 0;
  for (;;) {
    const x = a[i];
    const y = b[j];
    if (!x && !y) return merged;
    if (x && y && x.input === y.input) {
      push(x.input, x.coefficient.mul(ka).add(y.coefficient.mul(kb)));
      i += 1;
      j += 1;
    } else if (x && (!y || x.input < y.input)) {
      push(x.input, x.coefficient.mul(ka));
      i += 1;
    } else if (y) {
      push(y.input, y.coefficient.mul(kb));
      j += 1;
    }
  }
}
