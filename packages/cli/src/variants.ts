import type { FitResult } from '@dryfit/engine';
import { cabinetId } from '@dryfit/output';
import type { Examination } from './examination.js';

/** A cabinet with one set of parameters. */
export interface Variant {
  readonly id: string;
  readonly result: FitResult;
}

/**
 * Every cabinet as it is made: with the parameters of each job line, and as declared where no job makes it.
 * Sorted by id; two lines that ask for the same are one variant.
 */
export function variants(examination: Examination): Variant[] {
  const made = examination.jobs.flatMap((job) => job.items.map((item) => item.result));
  const named = new Set(made.map((result) => result.fit.name));
  const unmade = examination.cabinets.filter((result) => !named.has(result.fit.name));
  const byId = new Map([...made, ...unmade].map((result) => [cabinetId(result), result]));
  return [...byId].map(([id, result]) => ({ id, result })).sort((a, b) => (a.id < b.id ? -1 : 1));
}
