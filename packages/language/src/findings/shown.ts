import { type Finding, type LengthFormat, render, type Severity, type Source } from '@dryfit/engine';
import { neverUsed } from '../checks/never-used.js';
import type { Examination } from './examine.js';

/** A finding as an editor shows it beside its text. */
export interface Shown {
  readonly code: string;
  readonly severity: Severity;
  /** What is wrong and, on a line of its own, what would cure it. */
  readonly message: string;
  readonly place: Source;
  readonly related: readonly { readonly message: string; readonly place: Source }[];
  /** The text has no effect and may be drawn paler. */
  readonly faded: boolean;
  /** Which pieces it is about, and the figures that a fix needs. */
  readonly data: Readonly<Record<string, unknown>>;
}

export function shown(finding: Finding, { units }: Pick<Examination, 'units'>, text: string): Shown {
  const format: LengthFormat = { units, unit: units === 'in' };
  const { code, severity, message, cure, source, related, about, data } = finding;
  return {
    code,
    severity,
    message: [message, cure].map((words) => render(words, format)).join('\n'),
    place: firstLineOf(source, text),
    related: related.map((other) => ({ message: render(other.message, format), place: other.source })),
    faded: code === neverUsed.code,
    data: { code, about, ...data },
  };
}

/** A statement over several lines is underlined in its first, so that the others stay readable. */
function firstLineOf(source: Source, text: string): Source {
  const [line = ''] = text.slice(source.start, source.end).split(/\r?\n/, 1);
  return { ...source, end: source.start + line.length };
}
