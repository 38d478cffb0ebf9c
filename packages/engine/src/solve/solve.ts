import { combine, type Term } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import { findConflicts } from './conflicts.js';
import { certificate, type Factored, factor } from './factor.js';
import { addTo, type Form } from './form.js';
import { freeGroups } from './freedom.js';
import { type Normal, normalise } from './normalise.js';
import { alongChain } from './order.js';
import { Places } from './places.js';
import { rowsOf } from './subsystem.js';
import { suspects } from './suspects.js';
import type {
  Body,
  Conflict,
  Equation,
  FreeGroup,
  LinearSystem,
  LinearTerm,
  Multiplier,
  Solution,
  Status,
} from './types.js';

/**
 * Solves a cabinet's equations exactly: a spanning forest over the differences of two planes, elimination for
 * the rest. Conflicts, reasons and sensitivities are worked out when they are asked for. Never throws,
 * whatever the equations say.
 */
export function solve(system: LinearSystem): Solution {
  return new Solved(system);
}

class Solved implements Solution {
  readonly bodies: readonly Body[];
  readonly origins: readonly (number | undefined)[];
  readonly freeGroups: readonly FreeGroup[];
  private readonly equations: readonly Equation[];
  private readonly unknowns: number;
  private readonly normal: Normal;
  private readonly factored: Factored;
  private readonly places: Places;
  /** Place of each equation in the order of contents. */
  private positions: ReadonlyMap<number, number> | undefined;
  private foundConflicts: readonly Conflict[] | undefined;
  private foundSuspects: ReadonlySet<number> | undefined;

  constructor(system: LinearSystem) {
    this.equations = system.equations;
    this.unknowns = system.unknowns.length;
    this.normal = normalise(system);
    this.factored = factor(this.normal);
    this.places = new Places(this.factored);
    this.bodies = this.places.bodies.map(({ axis, planes, main }) => ({ axis, unknowns: planes, main }));
    this.origins = this.places.origins.map((node) => (this.exists(node) ? node : undefined));
    this.freeGroups = freeGroups(this.places);
  }

  get conflicts(): readonly Conflict[] {
    this.foundConflicts ??= this.factored.bad.length === 0 ? [] : findConflicts(this.normal, this.equations);
    return this.foundConflicts;
  }

  valueOf(unknown: number): Rational | undefined {
    return this.exists(unknown) ? this.places.valueOf(unknown) : undefined;
  }

  status(unknown: number): Status {
    if (!this.exists(unknown) || this.places.isFree(unknown)) return 'free';
    if (this.factored.bad.length === 0) return 'determined';
    return this.statusOf([{ unknown, coefficient: Rational.ONE }]);
  }

  difference(high: number, low: number): { readonly value: Rational | undefined; readonly status: Status } {
    if (!this.exists(high) || !this.exists(low)) return { value: undefined, status: 'free' };
    const value = this.places.difference(high, low);
    if (value === undefined) return { value, status: 'free' };
    if (this.factored.bad.length === 0) return { value, status: 'determined' };
    const status = this.statusOf([
      { unknown: low, coefficient: MINUS_ONE },
      { unknown: high, coefficient: Rational.ONE },
    ]);
    return { value, status };
  }

  explain(terms: readonly LinearTerm[]): readonly Multiplier[] {
    const multipliers = this.multipliers(terms);
    if (!multipliers) return [];
    const { rank } = this.normal;
    const ordered = [...terms].sort(
      (a, b) => a.coefficient.compare(b.coefficient) || (rank[a.unknown] as number) - (rank[b.unknown] as number),
    );
    const seeds = ordered.map((term) => term.unknown);
    this.positions ??= new Map(rowsOf(this.normal).map((row, i) => [row.index, i]));
    const position = (equation: number) => this.positions?.get(equation) ?? 0;
    const entries = [...multipliers].map(([equation, multiplier]) => ({ equation, multiplier }));
    entries.sort((a, b) => position(a.equation) - position(b.equation));
    return alongChain(entries, ({ equation }) => this.equations[equation]?.terms ?? [], seeds);
  }

  sensitivity(terms: readonly LinearTerm[]): readonly Term[] {
    let inputs: readonly Term[] = [];
    for (const [index, multiplier] of this.multipliers(terms) ?? []) {
      const own = this.equations[index]?.value.terms ?? [];
      if (own.length > 0) inputs = combine(inputs, Rational.ONE, own, multiplier);
    }
    return inputs;
  }

  private exists(unknown: number | undefined): unknown is number {
    return unknown !== undefined && Number.isInteger(unknown) && unknown >= 0 && unknown < this.unknowns;
  }

  /** Certificate of a form, taken from the origins where its planes do not cancel. */
  private multipliers(terms: readonly LinearTerm[]): Map<number, Rational> | undefined {
    const { axis, plane } = this.normal;
    const form: Form = new Map();
    for (const { unknown, coefficient } of terms) {
      if (!this.exists(unknown)) return undefined;
      addTo(form, unknown, coefficient);
      const origin = this.places.origins[axis[unknown] as number];
      if (plane[unknown] && origin !== undefined) addTo(form, origin, coefficient.neg());
    }
    return certificate(this.factored, form);
  }

  /** Status of a form that has a value, where some equations do not agree. */
  private statusOf(terms: readonly LinearTerm[]): Status {
    const { bad } = this.factored;
    this.foundSuspects ??= suspects(this.factored);
    const used = [...(this.multipliers(terms)?.keys() ?? [])];
    const doubtful = used.some((index) => this.foundSuspects?.has(index));
    // A sheet is as thick as it is, whatever a loop through it says, unless the facts themselves disagree.
    const certain = used.every((index) => !this.equations[index]?.written) && bad.every((row) => row.written);
    return doubtful && !certain ? 'contradicted' : 'determined';
  }
}

const MINUS_ONE = Rational.of(-1);
