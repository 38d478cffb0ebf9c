import { Rational } from '@dryfit/engine';
import { generator, pick } from './random.js';

/** Reads a length written in mm ("17.7", "2/3"); for figures a test writes itself. */
export function mm(text: string | number): Rational {
  const negative = String(text).startsWith('-');
  const value = Rational.parse(String(text).replace('-', ''));
  if (value === undefined) throw new Error(`${text} is no length`);
  return negative ? value.neg() : value;
}

/** An inch is 25.4 mm exactly. */
export const INCH = mm('25.4');

/** Reads a length written in inches ("23 1/4", "9/16"). */
export const inch = (text: string | number): Rational => mm(text).mul(INCH);

/** Units of a file, and how lengths are written in it. */
export interface Spelling {
  readonly units: 'mm' | 'in';
  /** Writes a length given in mm, ≥ 0; `sums` where an expression may stand. */
  readonly write: (length: Rational, sums?: boolean) => string;
}

/** As decimals in a file of millimetres. */
export const inMillimetres: Spelling = { units: 'mm', write: (length) => decimal(length) };

/** As whole numbers and fractions in a file of inches: every length in mm is a fraction of an inch. */
export const inInches: Spelling = { units: 'in', write: (length) => fraction(length.div(INCH)) };

/** Every length in a unit of its own, or as a sum of both units, as the seed decides. */
export function mixedUnits(seed: number): Spelling {
  const random = generator(seed);
  const suffixed = (length: Rational): string => {
    const way = pick(random, 4);
    if (way === 0) return `${decimal(length)}mm`;
    if (way === 1) return `${decimal(length)} mm`;
    return way === 2 ? `${fraction(length.div(INCH))}"` : `${fraction(length.div(INCH))}in`;
  };
  return {
    units: random() < 0.5 ? 'mm' : 'in',
    write: (length, sums = false) => {
      if (!sums || random() < 0.6) return suffixed(length);
      const part = length.mul(Rational.of(1 + pick(random, 9), 10));
      return `${suffixed(part)} + ${suffixed(length.sub(part))}`;
    },
  };
}

/** "17.7"; a length that no decimal can say is written as a fraction. */
export function decimal(length: Rational): string {
  for (let places = 0; places <= 12; places++) {
    const scaled = length.mul(Rational.of(10n ** BigInt(places)));
    if (!scaled.isInteger()) continue;
    const digits = scaled.numerator.toString().padStart(places + 1, '0');
    return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  }
  return fraction(length);
}

/** "23 1/4", "9/16", "3". */
export function fraction(value: Rational): string {
  const whole = value.floor();
  const rest = value.sub(whole);
  if (rest.isZero()) return whole.toString();
  return whole.isZero() ? rest.toString() : `${whole} ${rest}`;
}
