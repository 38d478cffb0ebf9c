import type { Quantity } from '../../number/quantity.js';
import { Rational } from '../../number/rational.js';
import type { Spec } from '../../spec/spec.js';

/** How far below its value a written length may come by the tolerances of the facts it rests on, mm, ≥ 0. */
export function shortfall(spec: Spec, length: Quantity): Rational {
  let total = Rational.ZERO;
  for (const { input, coefficient } of length.terms) {
    const tolerance = spec.inputs.find(({ id }) => id === input)?.tolerance;
    if (!tolerance) continue;
    total = total.add(coefficient.abs().mul(coefficient.sign() > 0 ? tolerance.minus : tolerance.plus));
  }
  return total;
}
