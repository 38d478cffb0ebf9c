import { Rational } from '../number/rational.js';

/** What is bought beyond the need where the shop says nothing, in parts of the need: common practice, no source. */
export const USUAL_SPARE = Rational.of(5, 100);

/**
 * Grams of glue on a square metre of a glue line where the shop says nothing: polyvinyl acetate in wood joints that fit,
 * what is squeezed out with it. Common practice (150 to 200), no source; a maker's sheet for the glue in hand comes first.
 */
export const USUAL_SPREAD = Rational.of(150);
