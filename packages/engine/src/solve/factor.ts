import type { Rational } from '../number/rational.js';
import { Elimination } from './eliminate.js';
import { certify } from './flow.js';
import { type Forest, growForest } from './forest.js';
import { type Form, formOf } from './form.js';
import { type AnyRow, type Normal, termsOf } from './normalise.js';

/** A system worked through: forest, elimination, and the equations that neither needed. */
export interface Factored {
  readonly system: Normal;
  readonly forest: Forest;
  readonly elimination: Elimination;
  /** Equations that follow from those used, or contradict them. */
  readonly spare: readonly AnyRow[];
  /** Those that contradict them. */
  readonly bad: readonly AnyRow[];
}

export function factor(system: Normal): Factored {
  const forest = growForest(system);
  const elimination = new Elimination(system, forest);
  const { empties } = system;
  const bad = [...forest.bad, ...elimination.bad, ...empties.filter((row) => !row.value.isZero())];
  return { system, forest, elimination, spare: [...forest.spare, ...elimination.spare, ...empties], bad };
}

/** Multipliers of the equations that make up a form; undefined if it is not determined. */
export function certificate({ system, forest, elimination }: Factored, form: Form): Map<number, Rational> | undefined {
  return certify(system, forest, elimination, form);
}

/** Multipliers of the used equations that a spare one follows from or contradicts. */
export function certificateOf(factored: Factored, spare: AnyRow): Map<number, Rational> {
  return certificate(factored, formOf(termsOf(spare))) ?? new Map();
}
