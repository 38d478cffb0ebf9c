import {
  type Finding,
  type Input,
  ofInput,
  type ParameterValue,
  type Quantity,
  type Rational,
  type Source,
  say,
} from '@dryfit/engine';
import { notWhole } from '../checks/not-whole.js';
import { parameterCycle } from '../checks/parameter-cycle.js';
import { unitMismatch } from '../checks/unit-mismatch.js';
import { type Cabinet, type Expression, isParameter, type Parameter } from '../generated/ast.js';
import type { Unit } from '../parser/numbers.js';
import { type Measured, readMeasure } from './measure.js';
import { type Places, textOf } from './source.js';
import { asLength, type Reading, type Value } from './values.js';

/** A value a job gives to a parameter, by the parameter's name; in mm, or a count. */
export type Overrides = ReadonlyMap<string, Override>;

export interface Override {
  readonly value: Rational;
  readonly tolerance?: Input['tolerance'];
  readonly source: Source;
}

/** The parameters of one cabinet with the values they have here. */
export class Parameters {
  readonly values: ParameterValue[] = [];
  readonly inputs: Input[] = [];
  private readonly known = new Map<Parameter, Value | undefined>();
  /** Parameters whose defaults are being read, outermost first. */
  private readonly open: Parameter[] = [];
  private readonly reading: Reading;

  constructor(
    private readonly overrides: Overrides,
    private readonly places: Places,
    private readonly unit: Unit,
    private readonly report: (finding: Finding) => void,
  ) {
    this.reading = { places, unit, report, parameter: (parameter, use) => this.value(parameter, use) };
  }

  /** Reads every parameter of the cabinet, in the order written. */
  readAll(cabinet: Cabinet): void {
    for (const item of cabinet.items) if (isParameter(item)) this.value(item);
  }

  /** The value of a parameter; undefined when it has none, which has been reported. */
  value(parameter: Parameter, use?: Expression): Value | undefined {
    if (this.known.has(parameter)) return this.known.get(parameter);
    if (this.open.includes(parameter)) {
      this.reportCycle(parameter, use);
      return undefined;
    }
    this.open.push(parameter);
    const value = this.read(parameter);
    this.open.pop();
    this.known.set(parameter, value);
    return value;
  }

  private read(parameter: Parameter): Value | undefined {
    const { name } = parameter;
    if (name === undefined) return undefined;
    const given = this.overrides.get(name);
    const measured = readMeasure(parameter.value, this.reading);
    const written = measured && this.settle(parameter, measured);
    const value = given?.value ?? written?.value;
    if (value === undefined) return undefined;
    const kind = parameter.count ? 'count' : 'length';
    const source = given?.source ?? this.places.of(parameter);
    const tolerance = given ? given.tolerance : measured?.tolerance;
    this.values.push({ name, value, count: parameter.count, overridden: given !== undefined, source });
    // What is worked out from other parameters is no fact of its own: it stands for what it is worked out from.
    if (!given && written && written.terms.length > 0 && !tolerance) return { kind, quantity: written };
    const id = `parameter ${name}`;
    this.inputs.push({ id, label: name, kind: 'parameter', value, tolerance, source });
    return { kind, quantity: ofInput(id, value) };
  }

  /** A parameter is a length unless it is declared a count. */
  private settle(parameter: Parameter, { value }: Measured): Quantity | undefined {
    return settle(parameter, value, this.unit, (wrong) => {
      const source = this.places.of(parameter.value);
      this.report(wrong(source, textOf(parameter.value)));
    });
  }

  private reportCycle(parameter: Parameter, use: Expression | undefined): void {
    const round = [...this.open.slice(this.open.indexOf(parameter)), parameter].map(({ name }) => name);
    const source = use ? this.places.of(use) : this.places.property(parameter, 'name');
    const message = say`${parameter.name} depends on itself: ${round.join(' needs ')}`;
    this.report(parameterCycle({ source, message, cure: say`Give one of them a value that does not use the others.` }));
  }
}

type Complaint = (source: Source, text: string) => Finding;

/** A value brought into the kind that a parameter is declared with. */
export function settle(
  parameter: Parameter,
  value: Value,
  unit: Unit,
  complain: (complaint: Complaint) => void,
): Quantity | undefined {
  if (!parameter.count) {
    if (value.kind !== 'count') return asLength(value, unit);
    complain((source, text) =>
      unitMismatch({
        source,
        message: say`${text} is a count, and ${parameter.name} is a length`,
        cure: say`Declare it as a count: parameter ${parameter.name} : count = …, or give it a length.`,
      }),
    );
    return undefined;
  }
  if (value.kind === 'length') {
    complain((source, text) =>
      unitMismatch({
        source,
        message: say`${text} is a length, and ${parameter.name} is a count`,
        cure: say`Write how many, without a unit.`,
      }),
    );
    return undefined;
  }
  const count = value.quantity.value;
  if (count.isInteger() && count.sign() >= 0) return value.quantity;
  complain((source, text) =>
    notWhole({
      source,
      message: say`${text} comes to ${count.toString()}, and ${parameter.name} is a count, a whole number`,
      cure: say`Write a whole number, 0 or more.`,
      data: { value: count.toString() },
    }),
  );
  return undefined;
}
