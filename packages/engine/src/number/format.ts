import { floorDiv, gcdBig } from './integers.js';
import { Rational } from './rational.js';

/** Millimetres per inch: 25.4 exactly, by the yard and pound agreement of 1959. */
export const INCH = Rational.of(127, 5);

/** A printed length and what printing it left out. */
export interface Printed {
  readonly text: string;
  /** Exact length minus printed length, mm; zero when the text is exact. */
  readonly lost: Rational;
}

export type Units = 'mm' | 'in';

/** How lengths are printed. */
export interface LengthFormat {
  readonly units: Units;
  /** Most decimal places of a millimetre; 2 if absent. */
  readonly decimals?: number | undefined;
  /** Finest fraction of an inch, as its denominator; 64 if absent. */
  readonly denominator?: number | undefined;
  /** Add the unit: `564.6 mm`, `23 1/4"`. */
  readonly unit?: boolean | undefined;
}

/**
 * A length in millimetres as a decimal, rounded half up in magnitude (−0.005 prints as −0.01, as 0.005 prints
 * as 0.01) to at most `decimals` places, trailing zeros left off.
 * @throws RangeError unless decimals is an integer from 0 to 100.
 */
export function formatMm(r: Rational, options: { readonly decimals?: number | undefined } = {}): Printed {
  const decimals = options.decimals ?? 2;
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 100) {
    throw new RangeError(`decimals must be a whole number from 0 to 100, not ${decimals}`);
  }
  const unit = Rational.of(1, 10n ** BigInt(decimals));
  const steps = nearestSteps(r, unit);
  const digits = `${steps}`.padStart(decimals + 1, '0');
  const split = digits.length - decimals;
  const places = digits.slice(split).replace(/0+$/, '');
  const text = digits.slice(0, split) + (places === '' ? '' : `.${places}`);
  return printed(r, text, steps, unit);
}

/**
 * A length in millimetres as inches: a whole number, a proper fraction or both ('23', '1/4', '23 1/4'), in
 * lowest terms, rounded half up in magnitude to the nearest 1/denominator.
 * @throws RangeError unless denominator is a positive integer.
 */
export function formatInch(r: Rational, options: { readonly denominator?: number | undefined } = {}): Printed {
  const denominator = options.denominator ?? 64;
  if (!Number.isSafeInteger(denominator) || denominator < 1) {
    throw new RangeError(`a denominator must be a whole number above zero, not ${denominator}`);
  }
  const unit = INCH.div(Rational.of(denominator));
  const steps = nearestSteps(r, unit);
  const bottom = BigInt(denominator);
  const whole = steps / bottom;
  const rest = steps % bottom;
  const common = gcdBig(rest, bottom);
  const fraction = `${rest / common}/${bottom / common}`;
  const text = rest === 0n ? `${whole}` : whole === 0n ? fraction : `${whole} ${fraction}`;
  return printed(r, text, steps, unit);
}

/** A length in millimetres, printed in the units asked for. */
export function formatLength(r: Rational, format: LengthFormat): Printed {
  const { text, lost } = format.units === 'mm' ? formatMm(r, format) : formatInch(r, format);
  if (!format.unit) return { text, lost };
  return { text: format.units === 'mm' ? `${text} mm` : `${text}"`, lost };
}

/** |r| in whole units, half up. */
function nearestSteps(r: Rational, unit: Rational): bigint {
  const doubled = r.abs().div(unit).mul(Rational.TWO);
  return floorDiv(doubled.numerator + doubled.denominator, 2n * doubled.denominator);
}

/** Puts the sign back; what rounds to nothing has none. */
function printed(r: Rational, text: string, steps: bigint, unit: Rational): Printed {
  const magnitude = Rational.of(steps).mul(unit);
  const negative = r.sign() < 0 && steps !== 0n;
  return negative ? { text: `-${text}`, lost: r.add(magnitude) } : { text, lost: r.sub(magnitude) };
}
