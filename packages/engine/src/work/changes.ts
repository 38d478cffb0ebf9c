import { Rational } from '../number/rational.js';
import type { Changes } from '../spec/stock.js';

/** What is reckoned with where the shop says nothing, minutes. No source gives these; a shop times its own. */
export const USUAL_CHANGES: Changes = {
  machine: Rational.of(4),
  depth: Rational.of(2),
  base: Rational.of(2),
  pose: Rational.of(1),
  pattern: Rational.of(3),
  spacer: Rational.of(1),
  stop: Rational.of(1),
  load: Rational.of(1, 2),
  slot: Rational.of(1, 6),
  written: [],
};
