import type { Rational } from '../number/rational.js';
import type { Source } from './source.js';

/** How far a real piece may stray from a stated length, both in mm and both ≥ 0. */
export interface Tolerance {
  readonly plus: Rational;
  readonly minus: Rational;
}

/** A stated length with its tolerance; `tolerance` is absent when none was written. */
export interface Toleranced {
  readonly value: Rational;
  readonly tolerance?: Tolerance | undefined;
  readonly source?: Source | undefined;
}

/**
 * A fact that sizes depend on and that may be asked about: a parameter, a sheet's thickness, a written
 * length with a tolerance. Quantities carry their first-order dependence on inputs by id.
 */
export interface Input {
  /** Stable id: `parameter wide`, `thickness birch18`, or `<statement id> <n>` for a toleranced literal. */
  readonly id: string;
  /** In the trade's words, for reasons: "wide", "birch18 measured". */
  readonly label: string;
  readonly kind: 'parameter' | 'thickness' | 'literal';
  /** mm for lengths; a plain number for counts. */
  readonly value: Rational;
  readonly tolerance?: Tolerance | undefined;
  readonly source?: Source | undefined;
}
