import { INCH, Rational } from '@dryfit/engine';

export type Unit = 'mm' | 'in';

/** A number as it stands in the text. */
export interface ReadNumber {
  /** In the unit written, or without one; undefined for a fraction with nothing below its line. */
  readonly value: Rational | undefined;
  readonly unit: Unit | undefined;
  /** How to write a whole number and a fraction that were joined by a hyphen: `23 1/4"` for `23-1/4"`. */
  readonly unhyphened?: string;
}

/** Reads what the grammar's NUMBER takes, digit by digit and never through a floating number. */
export function readNumber(text: string): ReadNumber {
  const [, digits = '', mark = ''] = /^(.*?\d)[ \t]*(mm|in|["″])?$/.exec(text) ?? [];
  const unit = mark === '' ? undefined : mark === 'mm' ? 'mm' : 'in';
  const hyphened = /^(\d+)-(\d+\/\d+)$/.test(digits);
  const plain = hyphened ? digits.replace('-', ' ') : digits;
  const read = { value: Rational.parse(plain), unit } as const;
  return hyphened ? { ...read, unhyphened: text.replace('-', ' ') } : read;
}

/** Millimetres of one unit. */
export const MILLIMETRES: Readonly<Record<Unit, Rational>> = { mm: Rational.ONE, in: INCH };

/** A whole number, such as the number of a part or of cabinets; undefined for anything else. */
export function readWhole(text: string | undefined): number | undefined {
  return text !== undefined && /^\d{1,9}$/.test(text) ? Number(text) : undefined;
}
