import type { Rational, Units } from '@dryfit/engine';
import { MILLIMETRES, readNumber } from '@dryfit/language';
import { Misuse } from '../io.js';

/**
 * A length of an option, mm; plain numbers are in the units of the file. Undefined where the option is not given.
 * @throws Misuse if it is none, or less than it may be
 */
export function lengthOption(
  option: string,
  words: string | undefined,
  units: Units,
  least: 'above zero' | 'zero',
): Rational | undefined {
  if (words === undefined) return undefined;
  const { value, unit, unhyphened } = readNumber(words.trim());
  const isFine = value !== undefined && unhyphened === undefined && value.sign() >= (least === 'zero' ? 0 : 1);
  if (!isFine)
    throw new Misuse(
      `${option} takes a length ${least === 'zero' ? 'of zero or more' : 'above zero'}, such as ${option} 17.7 or ${option} "11/16in", not ${words}`,
    );
  return value.mul(MILLIMETRES[unit ?? units]);
}
