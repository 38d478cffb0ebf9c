import type { Toleranced, Tolerances } from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { paragraphs } from './markdown.js';
import { toleranceWords } from './stock.js';

/** What a shop says of its own errors, a line each, and what it says nothing of. */
export function tolerancesHover(tolerances: Tolerances, lengths: Lengths): string {
  const { cup, dirt, mitre, reckon, square } = tolerances;
  const either = (one: Toleranced | undefined) => one?.tolerance && toleranceWords(one.tolerance, lengths).trim();
  const rows: readonly (readonly [string, string | undefined])[] = [
    ['saw', either(tolerances.saw)],
    ['out of square', square && `${lengths.unit(square.by)} over ${lengths.unit(square.over)}`],
    ['mitre', mitre && `± ${mitre.degrees.toNumber()}°`],
    ['grooves, rebates and housings', either(tolerances.cuts)],
    ['fence', either(tolerances.fence)],
    ['spacer', either(tolerances.spacer)],
    ['stop', either(tolerances.stop)],
    ['line read by eye', either(tolerances.line)],
    ['cup', cup && `up to ${lengths.unit(cup.most)}`],
    ['dirt', dirt && `up to ${lengths.unit(dirt.most)}`],
  ];
  const unsaid = rows.filter(([, value]) => value === undefined || value === '').map(([name]) => name);
  return paragraphs(
    '**tolerances**: how far off things come at this bench',
    rows.flatMap(([name, value]) => (value === undefined || value === '' ? [] : [`- ${name} ${value}`])).join('\n'),
    `held against the limits by ${reckon}`,
    unsaid.length === 0 ? '' : `taken to be nothing: ${unsaid.join(', ')}`,
  );
}
