import type { Term } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import { type Solution, solve } from '../solve/index.js';
import type { Tolerance } from '../spec/input.js';
import { type Axis, highSide, lowSide, type Side } from '../spec/sides.js';
import type { NotchStatement, PartId, PlaneRef, Spec } from '../spec/spec.js';
import { openingLabel } from './facts.js';
import { buildSystem, type System } from './system.js';
import { thicknessInput } from './thickness.js';

/** A plane as the geometry asks for it. */
export interface SideOf {
  readonly part: PartId;
  readonly side: Side;
}

/** A solved cabinet: where every plane lies, and how far it may stray. */
export class Solved {
  private readonly tolerances: ReadonlyMap<string, Tolerance>;
  /** Strays already worked out, by plane b and then plane a: every check asks for the same few. */
  private readonly strays = new Map<number, Map<number, Tolerance>>();

  /** Coordinates already asked for, by plane; `null` where there is none. */
  private readonly values: (Rational | null)[] = [];
  /** The same of parts' extents, by the plane at the low end. */
  private readonly extents: (Rational | null)[] = [];

  constructor(
    readonly spec: Spec,
    readonly system: System,
    readonly solution: Solution,
  ) {
    this.tolerances = inputTolerances(spec);
  }

  /** Coordinate of a part's side, mm; undefined while it is not fixed or two statements disagree about it. */
  at(part: PartId, side: Side): Rational | undefined {
    const number = this.system.planes.side(part, side);
    return number === undefined ? undefined : this.value(number);
  }

  /** Coordinate of any plane a spec may name. */
  plane(ref: PlaneRef): Rational | undefined {
    const number = this.system.planes.of(ref);
    return number === undefined ? undefined : this.value(number);
  }

  groove(part: PartId, side: Side): Rational | undefined {
    const number = this.system.planes.groove(part, side);
    return number === undefined ? undefined : this.value(number);
  }

  /** The wall inside `side` of the notch at that corner. */
  notch(part: PartId, side: Side, corner: NotchStatement['corner']): Rational | undefined {
    const number = this.system.planes.notch(part, side, corner);
    return number === undefined ? undefined : this.value(number);
  }

  /** A part's extent along an axis; known even where its place is not. */
  extent(part: PartId, axis: Axis): Rational | undefined {
    const low = this.system.planes.side(part, lowSide(axis));
    const high = this.system.planes.side(part, highSide(axis));
    if (low === undefined || high === undefined) return undefined;
    const known = this.extents[low];
    if (known !== undefined) return known ?? undefined;
    const found = this.solution.difference(high, low);
    const value = found.status === 'determined' ? found.value : undefined;
    this.extents[low] = value ?? null;
    return value;
  }

  /** How far the distance from plane b to plane a may stray with the inputs' tolerances (worst case, linear). */
  stray(a: number | undefined, b: number | undefined): Tolerance {
    if (a === undefined || b === undefined || a === b) return CERTAIN;
    const known = this.strays.get(b) ?? new Map<number, Tolerance>();
    this.strays.set(b, known);
    const found = known.get(a) ?? this.strayBetween(a, b);
    known.set(a, found);
    return found;
  }

  private strayBetween(a: number, b: number): Tolerance {
    return this.strayOf(
      this.solution.sensitivity([
        { unknown: a, coefficient: Rational.ONE },
        { unknown: b, coefficient: MINUS_ONE },
      ]),
    );
  }

  /** How far something that depends on inputs may stray with them (worst case, linear). */
  strayOf(terms: readonly Term[]): Tolerance {
    let plus = Rational.ZERO;
    let minus = Rational.ZERO;
    for (const { input, coefficient } of terms) {
      const tolerance = this.tolerances.get(input);
      if (!tolerance) continue;
      const size = coefficient.abs();
      const up = coefficient.sign() > 0 ? tolerance.plus : tolerance.minus;
      const down = coefficient.sign() > 0 ? tolerance.minus : tolerance.plus;
      plus = plus.add(size.mul(up));
      minus = minus.add(size.mul(down));
    }
    return { plus, minus };
  }

  private value(number: number): Rational | undefined {
    const known = this.values[number];
    if (known !== undefined) return known ?? undefined;
    const found = this.solution.status(number) === 'determined' ? this.solution.valueOf(number) : undefined;
    this.values[number] = found ?? null;
    return found;
  }
}

const MINUS_ONE = Rational.of(-1);
const CERTAIN: Tolerance = { plus: Rational.ZERO, minus: Rational.ZERO };

function inputTolerances(spec: Spec): ReadonlyMap<string, Tolerance> {
  const tolerances = new Map<string, Tolerance>();
  for (const input of spec.inputs) if (input.tolerance) tolerances.set(input.id, input.tolerance);
  // Of a glued-up sheet, the layers' as well: its thickness is worked out from theirs.
  const names = new Set(spec.parts.map((part) => part.material));
  for (const name of names) {
    const material = spec.shop.materials.get(name);
    if (!material) continue;
    for (const layer of material.layers ?? []) names.add(layer);
    const used = spec.thickness === 'measured' && material.measured ? material.measured : material.thickness;
    if (used.tolerance) tolerances.set(thicknessInput(material.name), used.tolerance);
  }
  return tolerances;
}

/**
 * Solves a spec. Openings rounded to a step are not linear: they are first solved equal, then the rounded
 * value takes the place of the unknown and the last opening takes the rest.
 */
export function solveSpec(spec: Spec): Solved {
  const system = buildSystem(spec);
  const solution = solve(system);
  const rounded = roundedOpenings(spec, system, solution);
  if (rounded.size === 0) return new Solved(spec, system, solution);
  const again = buildSystem(spec, rounded);
  return new Solved(spec, again, solve(again));
}

function roundedOpenings(spec: Spec, system: System, solution: Solution): Map<string, Rational> {
  const rounded = new Map<string, Rational>();
  for (const statement of spec.statements) {
    const facts = statement.kind === 'joint' ? statement.facts : statement.kind === 'placing' ? [statement.fact] : [];
    for (const fact of facts) {
      if (fact.kind !== 'openings' || !fact.step || fact.step.value.sign() <= 0) continue;
      const label = openingLabel(statement.id, fact);
      const number = system.planes.length(label);
      const gap = number === undefined ? undefined : solution.valueOf(number);
      if (gap !== undefined) rounded.set(label, gap.div(fact.step.value).floor().mul(fact.step.value));
    }
  }
  return rounded;
}
