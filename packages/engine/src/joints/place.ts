import type { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import { type Axis, highSide, lowSide } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';

/** An interval of coordinates on one axis, mm, lo ≤ hi. */
export interface Range {
  readonly lo: Rational;
  readonly hi: Rational;
}

export function rangeOf(solved: Solved, part: PartId, axis: Axis): Range | undefined {
  const lo = solved.at(part, lowSide(axis));
  const hi = solved.at(part, highSide(axis));
  return lo && hi ? { lo, hi } : undefined;
}

/** Common stretch of two ranges; undefined when they do not overlap by a positive length. */
export function overlap(a: Range | undefined, b: Range | undefined): Range | undefined {
  if (!a || !b) return undefined;
  const lo = a.lo.gt(b.lo) ? a.lo : b.lo;
  const hi = a.hi.lt(b.hi) ? a.hi : b.hi;
  return lo.lt(hi) ? { lo, hi } : undefined;
}

/** The longer of what is left of a range when another is taken out of it. */
export function without(range: Range, taken: Range): Range | undefined {
  const common = overlap(range, taken);
  if (!common) return range;
  const before = { lo: range.lo, hi: common.lo };
  const after = { lo: common.hi, hi: range.hi };
  const longer = before.hi.sub(before.lo).ge(after.hi.sub(after.lo)) ? before : after;
  return longer.lo.lt(longer.hi) ? longer : undefined;
}
