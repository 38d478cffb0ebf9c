import type { FitResult } from '@dryfit/engine';
import type { Cabinet, JobLine, Parameter } from '../generated/ast.js';
import { textOf } from '../interpret/source.js';
import type { Lengths } from './lengths.js';
import { code, paragraphs, plain } from './markdown.js';

/** A parameter: its value, how it is written, and each line of a job that gives it another. */
export function parameterHover(
  parameter: Parameter,
  result: FitResult | undefined,
  jobLines: readonly JobLine[],
  lengths: Lengths,
): string {
  const known = result?.spec.parameters.find(({ name }) => name === parameter.name);
  const written = parameter.value === undefined ? '' : textOf(parameter.value);
  const value = known && (known.count ? known.value.toString() : lengths.unit(known.value));
  const overrides = jobLines.flatMap((line) =>
    line.arguments
      .filter((argument) => argument.parameter.$refText === parameter.name && argument.value !== undefined)
      .map(
        (argument) =>
          `- ${code(textOf(argument.value))} in ${plain(textOf(line))}, job ${plain(line.$container.name ?? '')}`,
      ),
  );
  return paragraphs(
    `**${plain(parameter.name)}** = ${value ?? code(written)}${known?.count ? ', a count' : ''}`,
    value === undefined || written === value || `${written} ${lengths.units}` === value
      ? ''
      : `written as ${code(written)}`,
    overrides.length === 0
      ? 'No job gives it another value.'
      : `A job gives it another value:\n\n${overrides.join('\n')}`,
  );
}

/** A cabinet: its outside, what it is made of, and how many are wanted. */
export function cabinetHover(
  cabinet: Cabinet,
  result: FitResult | undefined,
  jobLines: readonly JobLine[],
  lengths: Lengths,
): string {
  const outside = result?.fit.outside;
  const wanted = jobLines.map((line) => `- ${plain(textOf(line))}, job ${plain(line.$container.name ?? '')}`);
  return paragraphs(
    `**${plain(cabinet.name)}**: cabinet${outside ? ` ${lengths.product([outside.x, outside.y, outside.z])} (width × depth × height)` : ''}`,
    result && madeOf(result),
    wanted.join('\n'),
  );
}

/** `6 parts, 10 joints, 60 slots to mill`. */
export function madeOf({ fit }: FitResult): string {
  const slots = fit.joints.flatMap((joint) => joint.halves).reduce((sum, half) => sum + half.slots.length, 0);
  return `${fit.parts.length} parts, ${fit.joints.length} joints, ${slots} slots to mill`;
}
