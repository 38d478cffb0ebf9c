import type { Bounded } from '../number/bounded.js';
import { formatLength, type LengthFormat } from '../number/format.js';
import { Rational } from '../number/rational.js';

/** A piece of a message: words, an exact length in mm, or a length known to a stated bound. */
export type Piece = string | Rational | Bounded;

/**
 * A message whose lengths are not yet printed: a face renders it in the reader's units, so that rounding
 * happens once, at the edge.
 */
export type Text = readonly Piece[];

/** Tagged template for messages: lengths stay exact, counts go in as `String(n)`, texts are spliced. */
export function say(strings: TemplateStringsArray, ...values: readonly (Piece | number | Text)[]): Text {
  const pieces: Piece[] = [];
  strings.forEach((words, i) => {
    if (words !== '') pieces.push(words);
    const value = values[i];
    if (value === undefined) return;
    if (Array.isArray(value)) pieces.push(...(value as Text));
    else pieces.push(typeof value === 'number' ? String(value) : (value as Piece));
  });
  return pieces;
}

/** Joins texts with words between them: "6, 10 and 12". */
export function list(items: readonly (Piece | Text)[], last = ' and '): Text {
  const pieces: Piece[] = [];
  items.forEach((item, i) => {
    if (i > 0) pieces.push(i === items.length - 1 ? last : ', ');
    if (Array.isArray(item)) pieces.push(...(item as Text));
    else pieces.push(item as Piece);
  });
  return pieces;
}

/** Prints a message; lengths carry no unit unless `format.unit` asks for it. */
export function render(text: Text, format: LengthFormat): string {
  return text
    .map((piece) => {
      if (typeof piece === 'string') return piece;
      if (piece instanceof Rational) return formatLength(piece, format).text;
      return formatLength(fromBounded(piece), format).text;
    })
    .join('');
}

/** A bounded length as the nearest thousandth of a millimetre, for printing only. */
export function fromBounded(length: Bounded): Rational {
  return Rational.of(Math.round(length.value * 1000), 1000);
}
