import { type Finding, say } from '@dryfit/engine';
import { writtenTwice } from '../checks/written-twice.js';
import type { JobLine } from '../generated/ast.js';
import type { Unit } from '../parser/numbers.js';
import { readMeasure } from './measure.js';
import { type Override, type Overrides, settle } from './parameters.js';
import { Places, textOf } from './source.js';
import type { Reading } from './values.js';

/** The values a line of a job gives to the parameters of its cabinet, in the units of the job's file. */
export function readOverrides(line: JobLine, unit: Unit, report: (finding: Finding) => void): Overrides {
  const places = new Places(line);
  const reading: Reading = { places, unit, report, parameter: () => undefined };
  const overrides = new Map<string, Override>();
  for (const { parameter, value, ...argument } of line.arguments) {
    const declared = parameter?.ref;
    const measured = readMeasure(value, reading);
    if (!declared || !measured || value === undefined) continue;
    const source = places.at(argument.$cstNode);
    const before = overrides.get(declared.name);
    if (before) {
      report(
        writtenTwice({
          source,
          message: say`${declared.name} is given twice`,
          cure: say`Take one of the two out.`,
          related: [{ message: say`first here`, source: before.source }],
        }),
      );
      continue;
    }
    const quantity = settle(declared, measured.value, unit, (complaint) =>
      report(complaint(places.of(value), textOf(value))),
    );
    if (quantity) overrides.set(declared.name, { value: quantity.value, tolerance: measured.tolerance, source });
  }
  return overrides;
}
