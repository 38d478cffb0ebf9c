import { type Planning, planWork } from '@dryfit/engine';
import type { PlannedJob } from '@dryfit/output';
import type { Examination, MadeJob } from './examination.js';
import { Misuse } from './io.js';
import type { FindingOptions } from './options.js';
import type { Sound } from './sound.js';

/** What every command that plans a job can be told. */
export interface PlanningOptions extends FindingOptions {
  readonly withErrors?: boolean | undefined;
  /** Seconds that the whole plan may be reckoned on; 10 unless said. */
  readonly seconds?: number | undefined;
}

/**
 * The job of a file, planned.
 * @throws Misuse if the file has no such job
 */
export async function planned(
  { examination, counts }: Sound,
  file: string,
  name: string | undefined,
  { seconds }: PlanningOptions,
): Promise<PlannedJob & { readonly name: string }> {
  const job = jobOf(examination, file, name);
  return {
    name: job.name,
    title: [`job ${job.name}`],
    items: job.items,
    plan: await planWork(job.items, inTime(seconds, job.orders)),
    errors: counts.errors,
  };
}

/** One time for a whole plan, by the clock on the wall. */
export const inTime = (seconds: number | undefined, orders: MadeJob['orders']): Planning => ({
  timeLimitMs: (seconds ?? 10) * 1000,
  clock: () => performance.now(),
  orders,
});

/**
 * The job that is meant; the only one of a file need not be named.
 * @throws Misuse if the file has no such job
 */
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
