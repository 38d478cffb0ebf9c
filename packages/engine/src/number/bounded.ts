import { Rational } from './rational.js';

/**
 * A length that need not be rational (a chord, a mitre face), computed in floating point: the true value lies
 * within `error` of `value`. Such lengths are compared with limits and printed; they never flow back into the
 * linear system.
 */
export interface Bounded {
  readonly value: number;
  /** ≥ 0. */
  readonly error: number;
}

// One rounding to nearest is off by at most 2^-53 of the result; twice that leaves room for the rounding of
// the bounds themselves, and TINY for results below the normal range of doubles.
const ROUNDING = 2 ** -52;
const TINY = 2 ** -1000;

/** A rational as a bounded double; exact ones carry no error. */
export function boundedOf(r: Rational): Bounded {
  const value = r.toNumber();
  return r.isZero() || (r.isBinary() && exactly(value)?.equals(r)) ? { value, error: 0 } : rounded(value, 0);
}

/**
 * The square root of r.
 * @throws RangeError if r is negative.
 */
export function sqrtBounded(r: Rational): Bounded {
  if (r.sign() < 0) throw new RangeError(`no square root of ${r}`);
  if (r.isZero()) return { value: 0, error: 0 };
  const square = r.toNumber();
  // Below this the square has lost digits already; any value under 2^-500 bounds itself.
  if (square < TINY) return { value: 0, error: 2 ** -499 };
  return rounded(Math.sqrt(square), 0);
}

export function addBounded(a: Bounded, b: Bounded): Bounded {
  return rounded(a.value + b.value, a.error + b.error);
}

export function subBounded(a: Bounded, b: Bounded): Bounded {
  return rounded(a.value - b.value, a.error + b.error);
}

export function mulBounded(a: Bounded, b: Bounded): Bounded {
  return rounded(a.value * b.value, Math.abs(a.value) * b.error + Math.abs(b.value) * a.error + a.error * b.error);
}

/**
 * Compares a bounded value with a limit (a number stands for exactly the double it is): −1 if it is certainly
 * below, 1 if certainly above, 0 if it is known without error and equal, undefined if the bound does not decide.
 */
export function compareBounded(a: Bounded, limit: Rational | number): -1 | 0 | 1 | undefined {
  const near = typeof limit === 'number' ? limit : limit.toNumber();
  const gap = a.value - near;
  // Far from the limit, doubles decide: their own rounding is well under this margin.
  if (Math.abs(gap) > 2 * a.error + (Math.abs(a.value) + Math.abs(near)) * 4 * ROUNDING) return gap < 0 ? -1 : 1;
  const value = exactly(a.value);
  const error = exactly(a.error);
  const line = typeof limit === 'number' ? exactly(limit) : limit;
  if (!value || !error || !line) return undefined;
  if (value.add(error).lt(line)) return -1;
  if (value.sub(error).gt(line)) return 1;
  return error.isZero() ? 0 : undefined;
}

/**
 * Compares √q with r exactly, by squaring.
 * @throws RangeError if q is negative.
 */
export function compareSqrt(q: Rational, r: Rational): -1 | 0 | 1 {
  if (q.sign() < 0) throw new RangeError(`no square root of ${q}`);
  return r.sign() < 0 ? 1 : q.compare(r.mul(r));
}

/** A result of one floating-point operation whose arguments already carried `error`. */
function rounded(value: number, error: number): Bounded {
  return { value, error: (error + Math.abs(value) * ROUNDING) * (1 + 4 * ROUNDING) + TINY };
}

/** The fraction that a double is; undefined for infinities and NaN. */
function exactly(x: number): Rational | undefined {
  if (!Number.isFinite(x)) return undefined;
  let n = x;
  let places = 0;
  while (!Number.isInteger(n)) {
    n *= 2;
    places += 1;
  }
  return places === 0 ? Rational.of(n) : Rational.of(BigInt(n), 1n << BigInt(places));
}
