import { type Finding, type LengthFormat, Rational, type Severity, type Text } from '@dryfit/engine';
import { type Locate, placeOf, type Quoted } from '../place.js';
import { printText } from '../print/length.js';
import { byText } from '../print/order.js';
import type { FindingJson, FindingsJson } from './schema.js';

/** A finding with the cabinets it was made in; several when a job makes one cabinet with several parameters. */
export interface Found {
  readonly finding: Finding;
  /** Labels of the cabinets; empty for a finding about the text itself. */
  readonly cabinets: readonly Text[];
}

export interface Counts {
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
}

/** Counts findings by severity. */
export function countFindings(found: readonly Pick<Found, 'finding'>[]): Counts {
  const of = (severity: Severity) => found.filter(({ finding }) => finding.severity === severity).length;
  return { errors: of('error'), warnings: of('warning'), infos: of('info') };
}

/**
 * Findings in the order of their places, those that say the same at the same place drawn into one that names
 * all their cabinets.
 */
export function gatherFindings(found: readonly Found[], locate: Locate): Found[] {
  const gathered = new Map<string, { found: Found; place: Quoted | undefined; key: string }>();
  for (const one of found) {
    const { code, severity, message, cure, source, related } = one.finding;
    const key = JSON.stringify([code, severity, exact(message), exact(cure), source, related]);
    const known = gathered.get(key);
    const cabinets = [...(known?.found.cabinets ?? []), ...one.cabinets];
    gathered.set(key, { found: { finding: one.finding, cabinets: unique(cabinets) }, place: locate(source), key });
  }
  return [...gathered.values()]
    .sort(
      (a, b) =>
        byText(a.place?.file ?? a.found.finding.source.uri, b.place?.file ?? b.found.finding.source.uri) ||
        a.found.finding.source.start - b.found.finding.source.start ||
        byText(a.key, b.key),
    )
    .map(({ found: one }) => one);
}

function unique(labels: readonly Text[]): Text[] {
  return [...new Map(labels.map((label) => [JSON.stringify(exact(label)), label])).values()];
}

const exact = (text: Text): readonly unknown[] =>
  text.map((piece) => (piece instanceof Rational ? piece.toString() : piece));

/** Findings as data, for `check --format json` and fit.json. */
export function findingJson({ finding, cabinets }: Found, locate: Locate, format: LengthFormat): FindingJson {
  const place = placeOf(finding.source, locate);
  const { joint, parts = [], slots = [] } = finding.about;
  return {
    code: finding.code,
    severity: finding.severity,
    message: printText(finding.message, format),
    cure: printText(finding.cure, format),
    cabinets: cabinets.map((label) => printText(label, format)),
    ...(place && { place }),
    related: finding.related.map((related) => {
      const there = placeOf(related.source, locate);
      return { message: printText(related.message, format), ...(there && { place: there }) };
    }),
    parts: [...parts],
    ...(joint !== undefined && { joint }),
    slots: [...slots],
    ...(finding.data && { data: mutable(finding.data) }),
  };
}

function mutable(data: NonNullable<Finding['data']>): Record<string, string | string[]> {
  return Object.fromEntries(
    Object.entries(data)
      .sort(([a], [b]) => byText(a, b))
      .map(([name, value]) => [name, typeof value === 'string' ? value : [...value]]),
  );
}

/** The document that `check --format json` prints: the same findings as the text, and their counts. */
export function findingsJson(
  found: readonly Found[],
  files: number,
  locate: Locate,
  format: LengthFormat,
): FindingsJson {
  const gathered = gatherFindings(found, locate);
  return {
    format: 'dryfit-findings',
    version: 1,
    files,
    ...countFindings(gathered),
    findings: gathered.map((one) => findingJson(one, locate, format)),
  };
}
