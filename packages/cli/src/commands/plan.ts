import { planJson, planJsonText, planTables, toPlain } from '@dryfit/output';
import { CLEAN, ERRORS, type Io } from '../io.js';
import { paintFor } from '../paint.js';
import { type PlanningOptions, planned } from '../planned.js';
import { sound } from '../sound.js';

export interface PlanOptions extends PlanningOptions {
  readonly format?: 'text' | 'json' | undefined;
}

/** Prints in which set-ups a job is milled, in their cheapest order. */
export async function plan(file: string, name: string | undefined, options: PlanOptions, io: Io): Promise<number> {
  const found = await sound(file, options, io, 'planned');
  if (found === undefined) return ERRORS;
  const job = await planned(found, file, name, options);
  if (options.format === 'json') io.out.write(planJsonText(planJson(job)));
  else {
    const paint = paintFor(io.out, io.env);
    const tables = planTables(job).map((table) => toPlain(table, found.format, paint));
    io.out.write(tables.join('\n'));
  }
  return job.errors > 0 ? ERRORS : CLEAN;
}
