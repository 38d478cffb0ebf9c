import type { Bounded } from '../number/bounded.js';
import { formatMm, INCH, type Units } from '../number/format.js';
import { Rational } from '../number/rational.js';

/** As a rational, to the nearest millionth. */
const near = (off: Rational | Bounded): Rational =>
  off instanceof Rational ? off : Rational.of(Math.round(off.value * 1e6), 1e6);

/**
 * An error as it is told: hundredths of a millimetre, thousandths of an inch, since a fraction of an inch is coarser
 * than most errors; half up in magnitude.
 */
export function toldOff(off: Rational | Bounded, units: Units): string {
  const length = near(off);
  if (units === 'mm') return formatMm(length, { decimals: 2 }).text.replace('-', '−');
  return `${formatMm(length.div(INCH), { decimals: 3 }).text.replace('-', '−')}"`;
}
