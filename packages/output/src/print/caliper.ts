import { type Bounded, formatMm, INCH, Rational, type Units } from '@dryfit/engine';

/** Which way a figure may be rounded: a least one never down, a most one never up. */
export type Rounding = 'nearest' | 'up' | 'down';

const HUNDREDTH = Rational.of(1, 100);
const THOUSANDTH = INCH.div(Rational.of(1000));

/**
 * A length as calipers show it: hundredths of a millimetre, or thousandths of an inch, since a fraction of an inch is
 * coarser than what is let pass.
 */
export function byCaliper(length: Rational | Bounded, units: Units, rounding: Rounding = 'nearest'): string {
  const unit = units === 'mm' ? HUNDREDTH : THOUSANDTH;
  const exact = length instanceof Rational ? length : Rational.of(Math.round(length.value * 1e6), 1e6);
  const steps = exact.div(unit);
  const whole = rounding === 'up' ? steps.ceil() : rounding === 'down' ? steps.floor() : steps.roundTo(Rational.ONE);
  const printed = whole.mul(Rational.of(1, units === 'mm' ? 100 : 1000));
  return formatMm(printed, { decimals: units === 'mm' ? 2 : 3 }).text.replace('-', '−');
}
