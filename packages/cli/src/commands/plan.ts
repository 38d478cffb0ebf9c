import { planWork } from '@dryfit/engine';
import { type PlannedJob, planJson, planJsonText, planTables, toPlain } from '@dryfit/output';
import type { Examination, MadeJob } from '../examination.js';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import type { FindingOptions } from '../options.js';
import { paintFor } from '../paint.js';
import { sound } from '../sound.js';

export interface PlanOptions extends FindingOptions {
  readonly format?: 'text' | 'json' | undefined;
  readonly withErrors?: boolean | undefined;
  /** Seconds that the order may be reckoned on. */
  readonly seconds?: number | undefined;
}

/** Prints in which set-ups a job is milled, in their cheapest order. */
export async function plan(file: string, name: string | undefined, options: PlanOptions, io: Io): Promise<number> {
  const found = await sound(file, options, io, 'planned');
  if (found === undefined) return ERRORS;
  const { examination, format, counts } = found;
  const job = jobOf(examination, file, name);
  const planned: PlannedJob = {
    title: [`job ${job.name}`],
    items: job.items,
    plan: await planWork(job.items, (options.seconds ?? 10) * 1000),
    errors: counts.errors,
  };
  if (options.format === 'json') {
    io.out.write(planJsonText(planJson(planned)));
    return counts.errors > 0 ? ERRORS : CLEAN;
  }
  const paint = paintFor(io.out, io.env);
  io.out.write(
    planTables(planned)
      .map((table) => toPlain(table, format, paint))
      .join('\n'),
  );
  return counts.errors > 0 ? ERRORS : CLEAN;
}

/** The job that is meant; the only one of a file need not be named. */
export function jobOf({ jobs }: Examination, file: string, name: string | undefined): MadeJob {
  const [first] = jobs;
  if (first === undefined)
    throw new Misuse(`there is no job in ${file}; a job says how many of which cabinet are made`);
  const names = jobs.map((one) => one.name).join(', ');
  if (name === undefined) {
    if (jobs.length > 1) throw new Misuse(`there are several jobs in ${file}; name one of ${names}`);
    return first;
  }
  const job = jobs.find((one) => one.name === name);
  if (job === undefined) throw new Misuse(`there is no job ${name} in ${file}; there is ${names}`);
  return job;
}
