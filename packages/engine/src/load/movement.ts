import { Rational } from '../number/rational.js';

/** Percent of moisture between which the rule of movement holds (Wood Handbook FPL-GTR-190, chapter 13). */
export const RULE_HOLDS = { least: Rational.of(6), most: Rational.of(14) } as const;

/**
 * By how much a piece of wood grows across its grain, mm, less than zero where it shrinks: ΔD = D·C·(M₂ − M₁), equation
 * 13-2 of the Wood Handbook FPL-GTR-190 (2010).
 * @param width at the moisture `from`, mm
 * @param coefficient part of the width for each percent of moisture
 * @param from percent of moisture
 * @param to percent of moisture
 */
export function growth(width: Rational, coefficient: Rational, from: Rational, to: Rational): Rational {
  return width.mul(coefficient).mul(to.sub(from));
}

/** Percent of moisture: as the wood is worked, and between what it swings in use. */
export interface Moisture {
  readonly made: Rational;
  readonly least: Rational;
  readonly most: Rational;
}

/**
 * What is taken where a cabinet says nothing: 8 as worked, and between 6 and 11 indoors. These are the averages that the
 * Wood Handbook recommends for interior woodwork in dry, most and damp parts of its country (from memory).
 */
export const USUAL_MOISTURE: Moisture = { made: Rational.of(8), least: Rational.of(6), most: Rational.of(11) };

/** Whether the rule of movement holds for all three. */
export const ruleHolds = ({ made, least, most }: Moisture): boolean =>
  [made, least, most].every((percent) => percent.ge(RULE_HOLDS.least) && percent.le(RULE_HOLDS.most));
