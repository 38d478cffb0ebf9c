import { addBounded, type Bounded, boundedOf, compareSqrt } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Tolerances } from '../spec/stock.js';
import { type Curve, cornersOf, straightened } from './curve.js';
import { rootSumSquare, type Stack, worstCase } from './stack.js';

export type Reckoning = Tolerances['reckon'];

/** What a shop that has said nothing goes by: errors of their own seldom all come at once. */
export const USUAL_RECKONING: Reckoning = 'root sum square';

/** How far off a result comes either way, mm: exact by the worst case, with its bound by root sum square. */
export function furthest(stack: Stack, reckoning: Reckoning): Bounded {
  if (reckoning === 'worst case') {
    const { least, most } = worstCase(stack);
    return boundedOf(Rational.max(least.abs(), most.abs()));
  }
  const { middle, half } = rootSumSquare(stack);
  return addBounded(boundedOf(middle.abs()), half);
}

/** True if it comes further off than a limit; decided exactly. */
export function exceeds(stack: Stack, limit: Rational, reckoning: Reckoning): boolean {
  if (stack.terms.length === 0) return stack.shift.abs().gt(limit);
  if (reckoning === 'worst case') {
    const { least, most } = worstCase(stack);
    return least.abs().gt(limit) || most.abs().gt(limit);
  }
  const { middle, squared } = rootSumSquare(stack);
  const left = limit.sub(middle.abs());
  return left.sign() < 0 || compareSqrt(squared, left) > 0;
}

/** What a curve's values are within of the truth, mm. */
export const CURVE_ERROR = 1e-9;

/** How far off a curve comes either way, mm. */
export function furthestOf(curve: Curve, reckoning: Reckoning): Bounded {
  if (curve.of.length === 0) return { value: Math.abs(curve.at([])), error: CURVE_ERROR };
  if (reckoning === 'worst case') {
    const { least, most } = cornersOf(curve);
    return { value: Math.max(Math.abs(least), Math.abs(most)), error: CURVE_ERROR };
  }
  const { middle, half } = straightened(curve);
  return { value: Math.abs(middle) + half, error: CURVE_ERROR };
}
