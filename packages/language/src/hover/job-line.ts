import type { FitResult, ParameterValue } from '@dryfit/engine';
import type { JobLine } from '../generated/ast.js';
import type { Knowledge } from './knowledge.js';
import type { Lengths } from './lengths.js';
import { paragraphs, plain, stale } from './markdown.js';
import { madeOf } from './parameter.js';

/** What a line of a job wants: the cabinet with the values given there, not with those it has by itself. */
export function jobLineHover(line: JobLine, knowledge: Knowledge, lengths: Lengths): string | undefined {
  const made = knowledge.made(line);
  if (made === undefined) return undefined;
  const { spec, fit } = made.result;
  const outside = fit.outside
    ? ` ${lengths.product([fit.outside.x, fit.outside.y, fit.outside.z])} (width × depth × height)`
    : '';
  return stale(
    paragraphs(
      `**${plain(`${line.count} of ${spec.name}`)}**: cabinet${outside}`,
      spec.parameters.map((parameter) => valueLine(parameter, lengths)).join('\n'),
      `Each: ${madeOf(made.result)}`,
      foundIn(made.result),
    ),
    made,
  );
}

function valueLine({ name, value, count, overridden }: ParameterValue, lengths: Lengths): string {
  return `- ${plain(name)} ${count ? value.toString() : lengths.unit(value)}${overridden ? ', given here' : ''}`;
}

function foundIn({ findings }: FitResult): string {
  const count = (severity: string, word: string): string[] => {
    const number = findings.filter((finding) => finding.severity === severity).length;
    return number === 0 ? [] : [`${number} ${word}${number === 1 ? '' : 's'}`];
  };
  return [...count('error', 'error'), ...count('warning', 'warning')].join(', ');
}
