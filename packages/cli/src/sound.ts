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
 * @param made what does not happen then: "written", "drawn", "planned"
 */
export async function sound(
  file: string,
  options: FindingOptions & { readonly withErrors?: boolean | undefined },
  io: Io,
  made: 'written' | 'drawn' | 'planned',
): Promise<Sound | undefined> {
  const examination = await examineFile(file, options, io);
  const format = lengthFormat(options, examination.units);
  const found = gatherFindings(examination.found, examination.locate);
  const counts = countFindings(found);
  io.err.write(findingsText(found, { format, locate: examination.locate, paint: paintFor(io.err, io.env) }));
  if (found.length > 0) io.err.write(`${summary(counts, 1)}\n`);
  if (counts.errors === 0 || options.withErrors) return { examination, format, counts };
  const does = { written: 'writes', drawn: 'draws', planned: 'plans' }[made];
  io.err.write(
    `dryfit: nothing was ${made}, because nothing with errors is to be made; --with-errors ${does} it marked so\n`,
  );
  return undefined;
}
