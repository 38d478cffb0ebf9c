import type { LengthFormat } from '@dryfit/engine';
import { type Counts, countFindings, findingsText, gatherFindings, summary } from '@dryfit/output';
import type { Examination } from './examination.js';
import { examineFile } from './examine.js';
import type { Io } from './io.js';
import { type FindingOptions, lengthFormat } from './options.js';
import { paintFor } from './paint.js';

/** A file that may be made from, and how many findings it has all the same. */
export interface Sound {
  readonly examination: Examination;
  readonly format: LengthFormat;
  readonly counts: Counts;
}

/**
 * Examines a file that something is to be made from and tells what was found. Undefined if there are errors and the
 * caller did not ask for the result all the same: nothing with errors is to be made.
 * @param made what does not happen then: "written", "drawn", "planned", "counted"
 */
export async function sound(
  file: string,
  options: FindingOptions & { readonly withErrors?: boolean | undefined },
  io: Io,
  made: 'written' | 'drawn' | 'planned' | 'counted',
): Promise<Sound | undefined> {
  const examination = await examineFile(file, options, io);
  const format = lengthFormat(options, examination.units);
  const found = gatherFindings(examination.found, examination.locate);
  const told = countFindings(found);
  // Made milder for telling, an error is still one for the saw.
  const errors = found.filter(({ finding }) => [finding.severity, finding.asFound].includes('error')).length;
  const counts = { ...told, errors };
  io.err.write(findingsText(found, { format, locate: examination.locate, paint: paintFor(io.err, io.env) }));
  if (found.length > 0) io.err.write(`${summary(told, 1)}\n`);
  if (counts.errors === 0 || options.withErrors) return { examination, format, counts };
  const does = { written: 'writes', drawn: 'draws', planned: 'plans', counted: 'counts' }[made];
  const milder = errors > told.errors ? ', however mildly they are told' : '';
  io.err.write(
    `dryfit: nothing was ${made}, because nothing with errors is to be made${milder}; --with-errors ${does} it marked so\n`,
  );
  return undefined;
}
