import type { Rational } from '@dryfit/engine';
import { readNumber } from '../parser/numbers.js';

/** A number that is no length: without mm or inches, and without a hyphened fraction. Undefined for anything else. */
export function plainNumber(text: string): Rational | undefined {
  const { value, unit, unhyphened } = readNumber(text);
  return unit === undefined && unhyphened === undefined ? value : undefined;
}
