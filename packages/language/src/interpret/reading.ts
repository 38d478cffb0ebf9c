import type { Finding, Input, PartId, Side } from '@dryfit/engine';
import type { Parameter } from '../generated/ast.js';
import type { Unit } from '../parser/numbers.js';
import type { Writing } from './measure.js';
import type { Parameters } from './parameters.js';
import type { Parts } from './parts.js';
import type { Places } from './source.js';
import type { Value } from './values.js';

/** Walls that parts have beside their six sides: of the grooves they sit in and of their notches. */
export interface Walls {
  readonly grooved: ReadonlySet<PartId>;
  /** The sides that a part's notches are cut in from, and how many notches from each. */
  readonly notched: ReadonlyMap<PartId, ReadonlyMap<Side, number>>;
  /** Canted parts, with the first side of the corner. */
  readonly canted: ReadonlyMap<PartId, Side>;
}

/** What the statements of one cabinet are read with. */
export interface CabinetReading {
  readonly places: Places;
  readonly unit: Unit;
  readonly parameters: Parameters;
  readonly parts: Parts;
  readonly walls: Walls;
  readonly inputs: Input[];
  report(finding: Finding): void;
}

/** What one statement is read with: lengths with a tolerance become inputs named after it. */
export class StatementReading implements Writing {
  readonly places: Places;
  readonly unit: Unit;
  readonly parts: Parts;
  readonly walls: Walls;
  private count = 0;

  constructor(
    readonly statement: string,
    private readonly cabinet: CabinetReading,
  ) {
    this.places = cabinet.places;
    this.unit = cabinet.unit;
    this.parts = cabinet.parts;
    this.walls = cabinet.walls;
  }

  parameter(parameter: Parameter): Value | undefined {
    return this.cabinet.parameters.value(parameter);
  }

  report(finding: Finding): void {
    this.cabinet.report(finding);
  }

  addInput(input: Omit<Input, 'id'>): string {
    const id = `${this.statement} ${++this.count}`;
    this.cabinet.inputs.push({ ...input, id });
    return id;
  }
}
