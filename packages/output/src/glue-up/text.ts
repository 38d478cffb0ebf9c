import type { FitResult, LengthFormat } from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { GLUING_CAUTIONS } from '../cautions.js';
import { plural } from '../findings/text.js';
import { printText } from '../print/length.js';
import { type Paint, PLAIN } from '../print/paint.js';
import { visible } from '../print/visible.js';
import type { GlueUpSheet } from './sheet.js';

export interface GlueUpStyle {
  readonly format: LengthFormat;
  readonly paint?: Paint | undefined;
  /** Errors in the file; said above everything. */
  readonly errors?: number | undefined;
}

const title = (result: FitResult, { steps }: GlueUpSheet, format: LengthFormat): string =>
  `Glue-up of ${printText(cabinetLabel(result.fit), format)}: ${plural(steps.length, 'step')}`;

const warning = (errors: number): string => `${plural(errors, 'error')} in the text: do not glue up from this.`;

/** The steps for a terminal. */
export function glueUpText(result: FitResult, sheet: GlueUpSheet, style: GlueUpStyle): string {
  const { format, paint = PLAIN, errors = 0 } = style;
  const lines = [paint.strong(visible(title(result, sheet, format)))];
  if (errors > 0) lines.push(visible(warning(errors)));
  for (const { step, words, facts } of sheet.steps) {
    lines.push('', paint.strong(visible(`${step.number}  ${words}.`)));
    const width = Math.max(...facts.map(([name]) => name.length));
    for (const [name, value] of facts) lines.push(visible(`   ${name.padEnd(width)}  ${value}`));
  }
  lines.push('', ...sheet.notes.map(visible), '', ...GLUING_CAUTIONS);
  return `${lines.join('\n')}\n`;
}

/** The same to be printed, each step with its drawing; `drawings` are their paths, in the order of the steps. */
export function glueUpMarkdown(
  result: FitResult,
  sheet: GlueUpSheet,
  style: GlueUpStyle,
  drawings: readonly string[],
): string {
  const { errors = 0 } = style;
  const lines = [`# ${escaped(title(result, sheet, style.format))}`, ''];
  if (errors > 0) lines.push(`**${escaped(warning(errors))}**`, '');
  lines.push(...GLUING_CAUTIONS.map((caution) => `- ${escaped(caution)}`), '');
  sheet.steps.forEach(({ step, words, facts }, i) => {
    lines.push(`## ${step.number}. ${escaped(words)}`, '');
    for (const [name, value] of facts) lines.push(`- ${escaped(name)}: ${escaped(value)}`);
    lines.push('', `![Step ${step.number}](${drawings[i] ?? ''})`, '');
  });
  lines.push(...sheet.notes.flatMap((note) => [escaped(note), '']));
  return `${lines.join('\n').trimEnd()}\n`;
}

/** Nothing in a name becomes markup. */
const escaped = (words: string): string => visible(words).replace(/[\\`*_[\]<>#|]/g, '\\$&');
