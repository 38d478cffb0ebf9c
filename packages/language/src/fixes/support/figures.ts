import { formatInch, formatMm, INCH, Rational } from '@dryfit/engine';
import type { Unit } from '../../parser/numbers.js';
import { readNumber } from '../../parser/numbers.js';

/** Finest fraction of an inch that is written as one. */
const FINEST = 64n;

/**
 * A length in mm as a file of these units would have it, exact: `16.2`, `23 1/4`; in an inch file what is no
 * sixty-fourth in millimetres, `412.5 mm`; what no decimal gives as a fraction, `100/3`.
 */
export function writtenAs(value: Rational, unit: Unit): string {
  if (unit === 'in') {
    const inches = value.div(INCH);
    if (FINEST % inches.denominator === 0n) return formatInch(value).text;
    const mm = formatMm(value, { decimals: DECIMALS });
    if (mm.lost.isZero()) return `${mm.text} mm`;
    return `${inches.numerator}/${inches.denominator}`;
  }
  const mm = formatMm(value, { decimals: DECIMALS });
  return mm.lost.isZero() ? mm.text : `${value.numerator}/${value.denominator}`;
}

const DECIMALS = 6;

/** The same, in the unit and with the mark of the number that it takes the place of. */
export function writtenLike(value: Rational, before: string, unit: Unit): string {
  const { unit: own } = readNumber(before.trim());
  const mark = own === undefined ? '' : (/([ \t]*)(mm|in|["″])$/.exec(before.trim())?.[0] ?? '');
  const text = writtenAs(value, own ?? unit);
  return text.endsWith(' mm') ? text : `${text}${mark}`;
}

/** A figure one likes to set, a millimetre or a sixteenth of an inch, on the side given. */
export function decent(value: Rational, unit: Unit, toward: 'more' | 'less'): Rational {
  const step = unit === 'in' ? INCH.div(Rational.of(16)) : Rational.ONE;
  const steps = value.div(step);
  return (toward === 'more' ? steps.ceil() : steps.floor()).mul(step);
}

/** A length out of a finding's data; undefined if it has none. */
export function lengthIn(text: string | readonly string[] | undefined): Rational | undefined {
  if (typeof text !== 'string' || !/^-?\d+(\/\d+)?$/.test(text)) return undefined;
  const [numerator = '0', denominator = '1'] = text.split('/');
  return Rational.of(BigInt(numerator), BigInt(denominator));
}
