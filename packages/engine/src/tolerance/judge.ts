import { addBounded, type Bounded, boundedOf, compareSqrt } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Tolerances } from '../spec/stock.js';
import { type Curve, cornersOf, straightened } from './curve.js';
import { rootSumSquare, type Stack, worstCase } from './stack.js';
import type { Tried } from './tried.js';

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
  if (wellWithin(stack, limit, reckoning)) return false;
  if (reckoning === 'worst case') {
    const { least, most } = worstCase(stack);
    return least.abs().gt(limit) || most.abs().gt(limit);
  }
  const { middle, squared } = rootSumSquare(stack);
  const left = limit.sub(middle.abs());
  return left.sign() < 0 || compareSqrt(squared, left) > 0;
}

/** True only where doubles leave no doubt, which is nearly everywhere: their rounding is far under a part in a million. */
function wellWithin({ shift, terms }: Stack, limit: Rational, reckoning: Reckoning): boolean {
  let [middle, sum] = [shift.toNumber(), 0];
  for (const { of, coefficient } of terms) {
    const factor = coefficient.toNumber();
    const [plus, minus] = [of.plus.toNumber(), of.minus.toNumber()];
    const half = Math.abs(factor) * ((plus + minus) / 2);
    middle += factor * ((plus - minus) / 2);
    sum += reckoning === 'worst case' ? half : half * half;
  }
  const furthest = Math.abs(middle) + (reckoning === 'worst case' ? sum : Math.sqrt(sum));
  return furthest < limit.toNumber() * (1 - 1e-6);
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

/** The same of a sum or of what is none. */
export const furthestIn = (adds: Tried, reckoning: Reckoning): Bounded =>
  'stack' in adds ? furthest(adds.stack, reckoning) : furthestOf(adds.curve, reckoning);

/** True if a result comes further off than a limit: a sum exactly, a curve beyond what its values are within. */
export function exceedsIn(adds: Tried, limit: Rational, reckoning: Reckoning): boolean {
  if ('stack' in adds) return exceeds(adds.stack, limit, reckoning);
  const { value, error } = furthestOf(adds.curve, reckoning);
  return value - error > limit.toNumber();
}
