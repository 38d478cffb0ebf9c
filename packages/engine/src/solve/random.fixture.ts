import fc from 'fast-check';
import { constant, minus, ofInput, plus, type Quantity, scale } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import type { AxisNumber, Equation, LinearSystem, LinearTerm, Unknown } from './types.js';

/** What a random system is made from. */
export interface Recipe {
  readonly seed: number;
  readonly parts: number;
  /** Differences of two planes, beyond the parts' thicknesses. */
  readonly edges: number;
  /** Centrings and equations with a common opening. */
  readonly generals: number;
  /** How many equations get a wrong value. */
  readonly wrong: number;
  /** How many statements the written equations are shared out to. */
  readonly statements: number;
}

export const recipe = (
  limits: { [K in keyof Omit<Recipe, 'seed'>]: readonly [number, number] },
): fc.Arbitrary<Recipe> => {
  const between = ([min, max]: readonly [number, number]) => fc.integer({ min, max });
  return fc.record({
    seed: fc.integer(),
    parts: between(limits.parts),
    edges: between(limits.edges),
    generals: between(limits.generals),
    wrong: between(limits.wrong),
    statements: between(limits.statements),
  });
};

/** Values of the inputs a random system depends on. */
export type Inputs = ReadonlyMap<string, Rational>;

export const INPUTS = ['parameter high', 'parameter wide', 'thickness back', 'thickness sheet'];

export interface RandomSystem extends LinearSystem {
  /** Where each unknown really lies, when no equation is wrong. */
  readonly truth: readonly Rational[];
}

/**
 * A system that has a solution by construction: every unknown is an affine form in the inputs, and every
 * equation states what holds between some of them, so that it stays true whatever the inputs are. Then some
 * values are falsified.
 */
export function randomSystem(of: Recipe, inputs?: Inputs): RandomSystem {
  const random = generator(of.seed);
  const pick = (below: number) => Math.floor(random() * below);
  const length = () => Rational.of(pick(4000) - 2000, [1, 2, 10, 3, 64][pick(5)] as number);
  const values = INPUTS.map((input) => [input, length()] as const);
  const inputValues = new Map([...values, ...(inputs ?? [])]);
  const affine = (): Quantity => {
    const input = INPUTS[pick(INPUTS.length)] as string;
    const part = scale(ofInput(input, inputValues.get(input) as Rational), Rational.of(pick(5) - 2, 1 + pick(2)));
    return plus(constant(length()), part);
  };

  const unknowns: Unknown[] = [];
  const truth: Quantity[] = [];
  const add = (axis: AxisNumber, label: string, plane: boolean, at: Quantity) => {
    unknowns.push({ axis, label, plane });
    truth.push(at);
    return unknowns.length - 1;
  };
  const equations: Equation[] = [];
  const state = (terms: readonly LinearTerm[], statement: string, written: boolean) => {
    let value = constant(Rational.ZERO);
    for (const { unknown, coefficient } of terms) value = plus(value, scale(truth[unknown] as Quantity, coefficient));
    equations.push({ terms, value, statement, text: `${statement} ${equations.length}`, written });
  };

  const onAxis: [number[], number[], number[]] = [[], [], []];
  for (let i = 0; i < of.parts; i++) {
    const axis = pick(3) as AxisNumber;
    const at = affine();
    const low = add(axis, `part${i}.low`, true, at);
    const thick = INPUTS[2 + pick(2)] as string;
    const high = add(axis, `part${i}.high`, true, plus(at, ofInput(thick, inputValues.get(thick) as Rational)));
    onAxis[axis].push(low, high);
    state(difference(high, low, Rational.ONE), `part part${i}`, false);
  }
  const statement = () => `statement ${pick(of.statements)}`;
  const planesOfOneAxis = (count: number): number[] | undefined => {
    const planes = onAxis[pick(3)] as number[];
    return planes.length < 2 ? undefined : Array.from({ length: count }, () => planes[pick(planes.length)] as number);
  };
  for (let i = 0; i < of.edges; i++) {
    const [a, b] = planesOfOneAxis(2) ?? [];
    if (a !== undefined && b !== undefined)
      state(difference(a, b, Rational.of(1 + pick(2), 1 + pick(3))), statement(), true);
  }
  let gap: number | undefined;
  for (let i = 0; i < of.generals; i++) {
    const planes = planesOfOneAxis(4);
    if (!planes) continue;
    const [a, b, c, d] = planes as [number, number, number, number];
    if (pick(2) === 0) {
      state([...difference(a, c, Rational.ONE), ...difference(b, d, Rational.ONE)], statement(), true);
    } else {
      gap ??= add((unknowns[a] as Unknown).axis, 'opening', false, affine());
      state(
        [...difference(a, b, Rational.ONE), { unknown: gap, coefficient: Rational.of(-1 - pick(2)) }],
        statement(),
        true,
      );
    }
  }
  for (let i = 0; i < of.wrong && equations.length > 0; i++) {
    const at = pick(equations.length);
    const equation = equations[at] as Equation;
    equations[at] = { ...equation, value: minus(equation.value, constant(Rational.of(1 + pick(30), 1 + pick(3)))) };
  }
  return { unknowns, equations, truth: truth.map((at) => at.value) };
}

export function difference(high: number, low: number, k = Rational.ONE): LinearTerm[] {
  return [
    { unknown: high, coefficient: k },
    { unknown: low, coefficient: k.neg() },
  ];
}

/** The same system with its unknowns and equations in another order, and the new place of each old one. */
export function shuffled(
  system: LinearSystem,
  seed: number,
): LinearSystem & { unknownAt: number[]; equationAt: number[] } {
  const random = generator(seed);
  const order = (count: number) => {
    const list = Array.from({ length: count }, (_, i) => i);
    for (let i = count - 1; i > 0; i--) {
      const j = Math.floor(random() * (i + 1));
      [list[i], list[j]] = [list[j] as number, list[i] as number];
    }
    return list;
  };
  const unknownAt = order(system.unknowns.length);
  const equationAt = order(system.equations.length);
  const unknowns: Unknown[] = [];
  const equations: Equation[] = [];
  system.unknowns.forEach((unknown, i) => {
    unknowns[unknownAt[i] as number] = unknown;
  });
  system.equations.forEach((equation, i) => {
    const terms = equation.terms.map((term) => ({ ...term, unknown: unknownAt[term.unknown] as number }));
    equations[equationAt[i] as number] = { ...equation, terms };
  });
  return { unknowns, equations, unknownAt, equationAt };
}

/** Numbers in [0, 1), the same ones for the same seed (linear congruences by Knuth's MMIX constants). */
export function generator(seed: number): () => number {
  let state = BigInt.asUintN(64, BigInt(seed) * 0x9e3779b97f4a7c15n + 1n);
  return () => {
    state = BigInt.asUintN(64, state * 6364136223846793005n + 1442695040888963407n);
    return Number(state >> 11n) / 2 ** 53;
  };
}
