import type { Bounded } from '../number/bounded.js';
import { sqrtBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';

/**
 * Length of a disc cutter's slot at the surface, mm: the chord 2·√(p·(D − p)) of a circle of diameter D at
 * plunge p (plane geometry). Past the half disc the slot is as long as the disc. Zero for p ≤ 0.
 */
export function chord(diameter: Rational, plunge: Rational): Bounded {
  if (plunge.sign() <= 0) return { value: 0, error: 0 };
  if (plunge.mul(Rational.TWO).ge(diameter)) return { value: diameter.toNumber(), error: 0 };
  const root = sqrtBounded(plunge.mul(diameter.sub(plunge)));
  return { value: 2 * root.value, error: 2 * root.error };
}

/** Half the chord as a double, for a first look. */
export function nearHalfChord(diameter: Rational, plunge: Rational): number {
  const d = diameter.toNumber();
  const p = plunge.toNumber();
  if (p <= 0) return 0;
  return 2 * p >= d ? d / 2 : Math.sqrt(p * (d - p));
}

/** Square of half the chord, exact: p·(D − p). */
export function halfChordSquared(diameter: Rational, plunge: Rational): Rational {
  if (plunge.sign() <= 0) return Rational.ZERO;
  if (plunge.mul(Rational.TWO).ge(diameter)) return diameter.mul(diameter).div(Rational.of(4));
  return plunge.mul(diameter.sub(plunge));
}
