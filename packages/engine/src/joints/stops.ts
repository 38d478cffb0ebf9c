import type { Half } from '../fit/fit.js';
import type { Rational } from '../number/rational.js';
import type { Jig } from '../spec/stock.js';

/** A stop at the end itself needs none; any other has to lie within the jig's range. */
export const inRange = ({ stop }: Jig, at: Rational): boolean =>
  at.isZero() || (stop !== undefined && at.ge(stop.least) && at.le(stop.most) && at.sign() > 0);

/** Where the stop stands for a half, mm from the machine's base: a block before the piece's end puts it further off. */
export const stopPlace = ({ at, block }: NonNullable<Half['stop']>): Rational => (block ? at.add(block.width) : at);

/** Whether a jig's stop can be set to a place exactly: within its range, and on one of its steps if it has any. */
export const canStand = (jig: Jig, at: Rational): boolean =>
  inRange(jig, at) && (at.isZero() || nearestStep(jig, at).equals(at));

/** The nearest place a stop can be set to. */
export function nearestStep({ stop }: Jig, at: Rational): Rational {
  if (!stop?.step || stop.step.sign() <= 0) return at;
  return at.sub(stop.least).roundTo(stop.step).add(stop.least);
}
