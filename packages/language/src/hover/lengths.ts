import { type Bounded, formatLength, formatMm, fromBounded, Rational, type Text, type Units } from '@dryfit/engine';

/** Prints lengths in the units of the file that is read. */
export class Lengths {
  constructor(readonly units: Units) {}

  /** `573.33` as `≈573.33`, and in inches with what rounding took away: `22 37/64 (+0.13 mm)`. */
  of(length: Rational | Bounded): string {
    if (!(length instanceof Rational)) return formatLength(fromBounded(length), { units: this.units }).text;
    const { text, lost } = formatLength(length, { units: this.units });
    if (lost.isZero()) return text;
    return this.units === 'mm' ? `≈${text}` : `${text} (${signedMm(lost)})`;
  }

  /** With its unit: `564.6 mm`, `23 1/4"`. */
  unit(length: Rational | Bounded): string {
    const text = this.of(length);
    return this.units === 'mm' ? `${text} mm` : text.replace(/^[^(]*[^( ]/, '$&"');
  }

  list(lengths: readonly Rational[]): string {
    return lengths.map((length) => this.of(length)).join(', ');
  }

  /** `564.6 × 538 × 17.7 mm`. */
  product(lengths: readonly (Rational | undefined)[]): string {
    if (this.units === 'in') return lengths.map((length) => (length ? this.unit(length) : 'not fixed')).join(' × ');
    return `${lengths.map((length) => (length ? this.of(length) : 'not fixed')).join(' × ')} mm`;
  }

  text(text: Text): string {
    return text.map((piece) => (typeof piece === 'string' ? piece : this.of(piece))).join('');
  }
}

/** `+0.13 mm`, with as many places as it takes to tell it from nothing. */
export function signedMm(length: Rational): string {
  for (let decimals = 2; decimals <= 6; decimals += 1) {
    const { text } = formatMm(length, { decimals });
    if (text !== '0') return `${length.sign() > 0 ? '+' : ''}${text.replace('-', '−')} mm`;
  }
  return 'less than 0.000001 mm';
}
