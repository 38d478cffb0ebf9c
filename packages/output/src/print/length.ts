import {
  type Bounded,
  formatLength,
  formatMm,
  fromBounded,
  type LengthFormat,
  Rational,
  type Text,
} from '@dryfit/engine';

/** How what rounding took away is told: in a sentence with the word for it, in a table by the figure alone. */
export type Telling = 'sentence' | 'table';

/**
 * An exact or bounded length (mm) in the reader's units. What rounding took away is shown beside it: in inches
 * as `23 1/64 (+0.13 mm lost)`, in a table `23 1/64 (+0.13 mm)`, where the two together are the exact length; in
 * millimetres, where it is less than half the last place, as a leading `≈`. An exact print shows nothing. A
 * bounded length has no exact print and stands for its nearest place.
 */
export function printLength(length: Rational | Bounded, format: LengthFormat, telling: Telling = 'sentence'): string {
  if (!(length instanceof Rational)) return formatLength(fromBounded(length), format).text;
  const { text, lost } = formatLength(length, format);
  if (lost.isZero()) return text;
  if (format.units === 'mm') return `≈${text}`;
  return `${text} (${printLost(lost)}${telling === 'sentence' ? ' lost' : ''})`;
}

/** `+0.13 mm`: exact minus printed, with as many places as it takes to tell it from nothing. */
export function printLost(lost: Rational): string {
  for (let decimals = 2; decimals <= 4; decimals += 1) {
    const { text } = formatMm(lost, { decimals });
    if (text !== '0') return `${lost.sign() > 0 ? '+' : ''}${text} mm`;
  }
  return 'under 0.0001 mm';
}

/**
 * A message in the reader's units. In millimetres its lengths are plainly rounded to the last place, as a
 * sentence is read; in inches what rounding took away is shown, since it can decide what the sentence says.
 */
export function printText(text: Text, format: LengthFormat, telling: Telling = 'sentence'): string {
  return text
    .map((piece) => {
      if (typeof piece === 'string') return piece;
      if (format.units === 'in') return printLength(piece, format, telling);
      return formatLength(piece instanceof Rational ? piece : fromBounded(piece), format).text;
    })
    .join('');
}
