import type { Finding, FitResult } from '@dryfit/engine';
import { type Cabinet, type File, isCabinet, isJob, type Job } from '../generated/ast.js';
import type { Lengths } from '../hover/lengths.js';
import { readWhole } from '../parser/numbers.js';

/** A line of its own above a cabinet or a job. */
export interface LensPlace {
  readonly of: Cabinet | Job;
  readonly start: number;
  readonly end: number;
}

/** Where lenses go: a cabinet that has parts, and a job that has lines. Nothing is worked out for that. */
export function lensPlaces(file: File): LensPlace[] {
  return file.entries.flatMap((entry): LensPlace[] => {
    const worth = isCabinet(entry)
      ? entry.items.some(({ $type }) => $type === 'PartLine')
      : isJob(entry) && entry.lines.length > 0;
    const cst = entry.$cstNode;
    return worth && cst ? [{ of: entry as Cabinet | Job, start: cst.offset, end: cst.end }] : [];
  });
}

/** `600 × 560 × 720 mm, 60 slots, nothing found`. */
export function cabinetLens({ fit }: FitResult, findings: readonly Finding[], lengths: Lengths): string {
  const slots = fit.joints.flatMap(({ halves }) => halves).reduce((sum, { slots: some }) => sum + some.length, 0);
  const outside = fit.outside ? lengths.product([fit.outside.x, fit.outside.y, fit.outside.z]) : 'outside not fixed';
  return [outside, counted(slots, 'slot'), findingWords(findings)].join(', ');
}

function findingWords(findings: readonly Finding[]): string {
  const of = (severity: Finding['severity']) => findings.filter((finding) => finding.severity === severity).length;
  const [errors, warnings] = [of('error'), of('warning')];
  if (errors + warnings === 0) return 'nothing wrong';
  return [errors && counted(errors, 'error'), warnings && counted(warnings, 'warning')].filter(Boolean).join(', ');
}

/** How many a line of a job makes, and of how many parts each. */
export interface LensLine {
  readonly count: string | undefined;
  readonly parts: number | undefined;
}

/** `6 cabinets, 36 parts`; parts are told only if those of every line are known. */
export function jobLens(lines: readonly LensLine[]): string {
  const counts = lines.map(({ count }) => readWhole(count) ?? 0);
  const cabinets = counts.reduce((sum, count) => sum + count, 0);
  const parts = lines.map(({ parts: some }, index) => (some === undefined ? Number.NaN : some * (counts[index] ?? 0)));
  const pieces = parts.reduce((sum, some) => sum + some, 0);
  return [counted(cabinets, 'cabinet'), ...(Number.isNaN(pieces) ? [] : [counted(pieces, 'part')])].join(', ');
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
