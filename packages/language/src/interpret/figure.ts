import { Rational } from '@dryfit/engine';
import { readNumber } from '../parser/numbers.js';

/** A pound in kg, exactly; international yard and pound agreement, 1959. */
export const POUND = Rational.of(45359237, 100000000);
/** A foot in metres, exactly; the same agreement. */
export const FOOT = Rational.of(3048, 10000);

/** A number that is no length: without mm or inches, and without a hyphened fraction. Undefined for anything else. */
export function plainNumber(text: string): Rational | undefined {
  const { value, unit, unhyphened } = readNumber(text);
  return unit === undefined && unhyphened === undefined ? value : undefined;
}
