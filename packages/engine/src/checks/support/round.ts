import type { Bounded } from '../../number/bounded.js';
import { Rational } from '../../number/rational.js';

const HUNDREDTHS = 100;
/** Far below what can be set, far above the bounds of the figures, so that 60 stays 60. */
const NOTHING = 1e-6;

/** A length to be reached, as hundredths of a millimetre that are never less. */
export const roundedUp = ({ value }: Bounded): Rational =>
  Rational.of(Math.ceil(value * HUNDREDTHS - NOTHING), HUNDREDTHS);

/** A length to stay within, as hundredths of a millimetre that are never more. */
export const roundedDown = ({ value }: Bounded): Rational =>
  Rational.of(Math.floor(value * HUNDREDTHS + NOTHING), HUNDREDTHS);
