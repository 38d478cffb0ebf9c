import type { Quantity, Term } from '../number/quantity.js';
import type { Rational } from '../number/rational.js';

/** Number of an axis: 0 is x, 1 is y, 2 is z. */
export type AxisNumber = 0 | 1 | 2;

/** One unknown coordinate or length, known by its place in the list. */
export interface Unknown {
  readonly axis: AxisNumber;
  /** Unique name; it decides ties, so that the order of the list never shows in an answer. */
  readonly label: string;
  /** False for a length such as the common opening between evenly spaced shelves. */
  readonly plane: boolean;
}

export interface LinearTerm {
  readonly unknown: number;
  readonly coefficient: Rational;
}

/** Σ coefficient · unknown = value. */
export interface Equation {
  readonly terms: readonly LinearTerm[];
  readonly value: Quantity;
  /** Id of the written statement or default fact it comes from; several equations may share one. */
  readonly statement: string;
  /** In the trade's words, for reasons. */
  readonly text: string;
  /** False for facts nobody wrote as a statement, such as a sheet's thickness. */
  readonly written: boolean;
}

export interface LinearSystem {
  readonly unknowns: readonly Unknown[];
  readonly equations: readonly Equation[];
}

/**
 * `determined`: one value. `free`: nothing fixes it. `contradicted`: it runs through a loop of equations that
 * do not agree, so that two of them would give it two values.
 */
export type Status = 'determined' | 'free' | 'contradicted';

/** An equation, by its place in the list, and how many times it counts. */
export interface Multiplier {
  readonly equation: number;
  /** Never zero. */
  readonly multiplier: Rational;
}

/** Planes of one axis whose distances from each other are known. */
export interface Body {
  readonly axis: AxisNumber;
  readonly unknowns: readonly number[];
  /** The one that the axis' origin belongs to. */
  readonly main: boolean;
}

/** Planes of one axis that can still move, and move because of each other. */
export interface FreeGroup {
  readonly axis: AxisNumber;
  readonly unknowns: readonly number[];
  /** The same planes as bodies that keep their inner distances. */
  readonly bodies: readonly (readonly number[])[];
  /** How many independent facts would fix them. */
  readonly freedom: number;
}

/** Statements that do not agree. Without any one of them the others do. */
export interface Conflict {
  readonly axis: AxisNumber;
  /** Equations of one loop that does not close, in order around it, starting with one of `blame`. */
  readonly equations: readonly number[];
  /** The statements they belong to, in the same order, each once. */
  readonly statements: readonly string[];
  /** The statement the miss is seen from: a written one if there is any, and the likeliest culprit. */
  readonly blame: string;
  /** What the equations of `blame` say minus what the others leave for them, mm; never zero. */
  readonly miss: Rational;
}

/**
 * What a system of equations says. Every answer depends on the contents of the equations and not on their
 * order. Unknowns that do not exist are `free`.
 */
export interface Solution {
  /**
   * Value of an unknown, planes being measured from the axis' origin; undefined while free. A contradicted
   * unknown has one of its values.
   */
  valueOf(unknown: number): Rational | undefined;
  status(unknown: number): Status;
  /** high − low; known for two planes of one body even where that body is not fixed. */
  difference(high: number, low: number): { readonly value: Rational | undefined; readonly status: Status };
  /**
   * The equations that fix a linear form, with multipliers such that Σ multiplier · equation is the form;
   * in order along the chain from the first negative term. A form whose coefficients do not cancel on an axis is
   * taken from that axis' origin. Empty if the form is not determined.
   */
  explain(terms: readonly LinearTerm[]): readonly Multiplier[];
  /** First-order dependence of a linear form on the input facts, sorted by input; empty if not determined. */
  sensitivity(terms: readonly LinearTerm[]): readonly Term[];
  /**
   * The plane each axis is measured from: the least of its main body. Undefined where the axis has no plane, or
   * equations fix its planes outright.
   */
  readonly origins: readonly (number | undefined)[];
  readonly bodies: readonly Body[];
  /** What is not fixed, axis by axis in the order of labels; groups that no plane belongs to are left out. */
  readonly freeGroups: readonly FreeGroup[];
  /** Sets of statements that do not agree, at most {@link MAX_CONFLICTS}. */
  readonly conflicts: readonly Conflict[];
}

/** No more conflicts than this are looked for: the rest mostly follow from the first. */
export const MAX_CONFLICTS = 12;
