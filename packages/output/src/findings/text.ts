import type { LengthFormat, Severity, Text } from '@dryfit/engine';
import type { Locate, Quoted } from '../place.js';
import { printText } from '../print/length.js';
import { type Paint, PLAIN } from '../print/paint.js';
import { visible } from '../print/visible.js';
import { type Counts, type Found, gatherFindings } from './found.js';

export interface FindingsStyle {
  readonly format: LengthFormat;
  readonly locate: Locate;
  readonly paint?: Paint | undefined;
}

/**
 * Findings for people: for each its severity and name, what is wrong, the place with the line quoted and
 * marked, what would cure it, and other places that have to do with it.
 */
export function findingsText(found: readonly Found[], style: FindingsStyle): string {
  return gatherFindings(found, style.locate)
    .map((one) => `${findingText(one, style)}\n\n`)
    .join('');
}

/** "2 errors and 1 warning in 3 files"; "no findings in 3 files" when there is none. */
export function summary(counts: Counts, files: number): string {
  const kinds = [plural(counts.errors, 'error'), plural(counts.warnings, 'warning'), plural(counts.infos, 'note')];
  const some = kinds.filter((kind) => !kind.startsWith('0 '));
  const what = some.length === 0 ? 'no findings' : some.join(', ').replace(/, ([^,]*)$/, ' and $1');
  return `${what} in ${plural(files, 'file')}`;
}

export function plural(n: number, one: string): string {
  return `${n} ${one}${n === 1 ? '' : 's'}`;
}

const WORD: Record<Severity, string> = { error: 'error', warning: 'warning', info: 'note' };

function findingText(one: Found, { format, locate, paint = PLAIN }: FindingsStyle): string {
  const { finding, cabinets } = one;
  const say = (text: Text) => visible(printText(text, format));
  const colour = paint[finding.severity];
  const lines = [`${colour(`${WORD[finding.severity]}[${finding.code}]`)} ${paint.strong(say(finding.message))}`];
  const place = locate(finding.source);
  const gutter = ' '.repeat(String(place?.endLine ?? 0).length);
  lines.push(...excerpt(place, finding.source.uri, colour, paint));
  if (finding.cure.length > 0) lines.push(`${gutter} ${paint.faint('=')} cure: ${say(finding.cure)}`);
  for (const related of finding.related) {
    const there = locate(related.source);
    const where = there === undefined ? '' : `${visible(there.file)}:${there.line}:${there.column}: `;
    lines.push(`${gutter} ${paint.faint('=')} see ${where}${say(related.message)}`);
  }
  if (cabinets.length > 0) lines.push(`${gutter} ${paint.faint('=')} in ${cabinets.map(say).join('; ')}`);
  return lines.join('\n');
}

/** The place and its first line, marked from the first to the last column there. */
function excerpt(place: Quoted | undefined, uri: string, colour: (text: string) => string, paint: Paint): string[] {
  const gutter = ' '.repeat(String(place?.endLine ?? 0).length);
  if (place === undefined) return [`${gutter} ${paint.faint('at')} ${visible(uri)}`];
  const lines = [`${gutter}${paint.faint('at')} ${visible(place.file)}:${place.line}:${place.column}`];
  const source = place.lines[0];
  if (source === undefined) return lines;
  const { shown, before, marked } = clip(source, place);
  lines.push(`${paint.faint(`${place.line} |`)} ${shown}`);
  const more = place.endLine > place.line ? ` to line ${place.endLine}` : '';
  lines.push(`${gutter} ${paint.faint('|')} ${before}${colour('^'.repeat(marked) + more)}`);
  return lines;
}

const WIDEST = 160;

/** A line as it can be shown, long ones cut to the marked place, tabs as two spaces, with what underlines it. */
function clip(source: string, place: Quoted): { shown: string; before: string; marked: number } {
  const start = place.column - 1;
  const end = place.endLine > place.line ? source.trimEnd().length : place.endColumn - 1;
  const from = source.length > WIDEST && start > WIDEST / 2 ? start - WIDEST / 4 : 0;
  const to = Math.min(source.length, from + WIDEST);
  const show = (text: string) => visible(text.replaceAll('\t', '  '));
  const lead = from > 0 ? '... ' : '';
  const trail = to < source.length ? ' ...' : '';
  const before = lead + show(source.slice(from, start));
  const marked = show(source.slice(start, Math.min(Math.max(end, start), to)));
  return {
    shown: `${lead}${show(source.slice(from, to))}${trail}`.trimEnd(),
    before: ' '.repeat([...before].length),
    marked: Math.max(1, [...marked].length),
  };
}
