import { type Batch, consumablesJson, consumablesTable, toPlain } from '@dryfit/output';
import { CLEAN, ERRORS, type Io } from '../io.js';
import type { FindingOptions } from '../options.js';
import { paintFor } from '../paint.js';
import { jobOf } from '../planned.js';
import { sound } from '../sound.js';

export interface ConsumablesOptions extends FindingOptions {
  readonly format?: 'text' | 'json' | undefined;
  readonly withErrors?: boolean | undefined;
}

/** Prints what a job uses up, and what is bought for it. */
export async function consumables(
  file: string,
  name: string | undefined,
  options: ConsumablesOptions,
  io: Io,
): Promise<number> {
  const found = await sound(file, options, io, 'counted');
  if (found === undefined) return ERRORS;
  const job = jobOf(found.examination, file, name);
  const batch: Batch = { title: [`job ${job.name}`], items: job.items, errors: found.counts.errors };
  if (options.format === 'json')
    io.out.write(`${JSON.stringify(consumablesJson(batch, found.format), undefined, 2)}\n`);
  else io.out.write(toPlain(consumablesTable.make(batch), found.format, paintFor(io.out, io.env)));
  return batch.errors > 0 ? ERRORS : CLEAN;
}
