import type { Finding, FitResult, Source, Units, WorkOrder } from '@dryfit/engine';
import { type Cancellation, interruptAndCheck, type LangiumDocument } from 'langium';
import { duplicateNames } from '../checks/duplicate-name.js';
import type { FileCheck } from '../checks/file-check.js';
import { importClashes } from '../checks/import-clash.js';
import { missingImports } from '../checks/missing-import.js';
import { namesOfSides } from '../checks/name-of-a-side.js';
import { unused } from '../checks/never-used.js';
import { withoutReason } from '../checks/no-reason.js';
import { notWholeCount } from '../checks/not-whole.js';
import { unknownChecks } from '../checks/unknown-check.js';
import type { MadeLine, Thickness, Variant } from '../fits/fits.js';
import { type Cabinet, type File, isCabinet, isJob, type JobLine } from '../generated/ast.js';
import { Places } from '../interpret/source.js';
import { unitOf } from '../interpret/units.js';
import { readWhole } from '../parser/numbers.js';
import { fileOf } from '../scope/imports.js';
import type { JoineryServices } from '../services.js';
import { allowed } from './allowed.js';
import { withoutFollowOns } from './follow-ons.js';
import { unknownNames } from './links.js';
import { orderFindings, ordersOf } from './orders.js';
import { type Severities, withSeverities } from './severity.js';
import { syntaxFindings } from './syntax.js';
import { isUsedElsewhere, variantFindings } from './variants.js';

/** Everything that a document says and that is to be said about it. */
export interface Examination {
  /** In the order of the text, silenced ones left out. */
  readonly findings: readonly Finding[];
  /** The cabinets the document defines, with the values written in them. */
  readonly cabinets: readonly FitResult[];
  readonly jobs: readonly ExaminedJob[];
  /** The units the document is written in. */
  readonly units: Units;
}

export interface ExaminedJob {
  readonly name: string;
  readonly source: Source;
  readonly lines: readonly { readonly count: number; readonly result: FitResult; readonly source: Source }[];
  /** What is milled before what. */
  readonly orders: readonly WorkOrder[];
}

export interface ExamineOptions {
  /** Which thickness sizes are worked from; as measured if absent. */
  readonly thickness?: Thickness | undefined;
  /** False leaves the cabinets as they are and looks at the text only; true if absent. */
  readonly joinery?: boolean | undefined;
  /** How grave a house takes the findings of a check to be, by its name. */
  readonly severity?: Severities | undefined;
  /** True keeps what is found only because a line cannot be read; left out if absent. */
  readonly followOns?: boolean | undefined;
}

const FILE_CHECKS: readonly FileCheck[] = [
  duplicateNames,
  missingImports,
  importClashes,
  unused,
  namesOfSides,
  unknownChecks,
  withoutReason,
];

/** Examines a document that has been linked. Never fails: a text that cannot be read gives findings. */
export function examine(
  document: LangiumDocument,
  services: JoineryServices,
  options: ExamineOptions = {},
): Examination {
  const examination = examineAll(document, services, options);
  return { ...examination, findings: withSeverities(examination.findings, options.severity ?? {}) };
}

function examineAll(document: LangiumDocument, services: JoineryServices, options: ExamineOptions): Examination {
  const file = fileOf(document);
  if (!file) return { findings: syntaxFindings(document), cabinets: [], jobs: [], units: 'mm' };
  const places = new Places(file);
  const context = { file, document, places, services };
  const text = [
    ...syntaxFindings(document),
    ...unknownNames(document, services),
    ...allowed(
      file,
      FILE_CHECKS.flatMap((check) => check(context)),
    ),
  ];
  const units = unitOf(file);
  if (options.joinery === false) return { findings: inOrder(text), cabinets: [], jobs: [], units };
  const { Fits, Shops } = services.joinery;
  const cabinets = new Map(
    cabinetsOf(file).map((cabinet): [Cabinet, Variant] => [cabinet, Fits.of(cabinet, options.thickness)]),
  );
  const jobs = file.entries.filter(isJob);
  const made = jobs.flatMap((job) =>
    job.lines.map((line): [JobLine, MadeLine | undefined] => [line, Fits.line(line, options.thickness)]),
  );
  const lines = new Map(made);
  const variants = (cabinet: Cabinet) =>
    made.flatMap(([, line]) => (line && line.cabinet === cabinet ? [line.variant] : []));
  const found = [
    ...text,
    ...Shops.findings(file),
    ...[...cabinets].flatMap(([cabinet, { findings }]) =>
      findings.filter((finding) => !isUsedElsewhere(finding, variants(cabinet))),
    ),
    ...made.flatMap(([line, one]) => {
      if (!one) return [];
      const written = Fits.of(one.cabinet, options.thickness);
      return [...one.findings, ...variantFindings(written, one.variant, places.of(line))];
    }),
    ...made.flatMap(([line]) => notWholeCount(line, places)),
    ...jobs.flatMap((job) => orderFindings(job, lines, places)),
  ];
  return {
    findings: inOrder(options.followOns ? found : withoutFollowOns(file, document.textDocument.getText(), found)),
    cabinets: [...cabinets.values()].map(({ result }) => result),
    jobs: jobs.map((job) => ({
      name: job.name ?? '',
      source: places.of(job),
      lines: job.lines.flatMap((line) => {
        const one = lines.get(line);
        const count = readWhole(line.count);
        return one && count ? [{ count, result: one.variant.result, source: places.of(line) }] : [];
      }),
      orders: ordersOf(job, places),
    })),
    units,
  };
}

/** The same, giving way between cabinets to whatever waits, such as the next key. */
export async function examineWhileTyping(
  document: LangiumDocument,
  services: JoineryServices,
  options: ExamineOptions,
  cancelToken: Cancellation.CancellationToken,
): Promise<Examination> {
  const { Fits } = services.joinery;
  const file = options.joinery === false ? undefined : fileOf(document);
  for (const cabinet of cabinetsOf(file)) {
    await interruptAndCheck(cancelToken);
    Fits.of(cabinet, options.thickness);
  }
  for (const line of file?.entries.filter(isJob).flatMap((job) => job.lines) ?? []) {
    await interruptAndCheck(cancelToken);
    Fits.line(line, options.thickness);
  }
  await interruptAndCheck(cancelToken);
  return examine(document, services, options);
}

const cabinetsOf = (file: File | undefined): readonly Cabinet[] => file?.entries.filter(isCabinet) ?? [];

/** In the order of the text, and what is said twice of one place once. */
function inOrder(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>();
  return [...findings]
    .sort((a, b) => a.source.start - b.source.start || a.source.end - b.source.end || (a.code < b.code ? -1 : 1))
    .filter(({ code, source, message }) => {
      const key = JSON.stringify([code, source.start, source.end, message]);
      return !seen.has(key) && seen.add(key);
    });
}
