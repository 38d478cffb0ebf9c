import { countFindings, findingsJson, findingsText, gatherFindings, summary, visible } from '@dryfit/output';
import { examineFiles } from '../examine.js';
import { findFiles } from '../input/find.js';
import { CLEAN, ERRORS, type Io, MISUSE } from '../io.js';
import { type FindingOptions, lengthFormat } from '../options.js';
import { paintFor } from '../paint.js';

export interface CheckOptions extends FindingOptions {
  readonly format: 'text' | 'json';
  readonly strict?: boolean | undefined;
}

/** Prints what is wrong with files and folders of files. */
export async function check(paths: readonly string[], options: CheckOptions, io: Io): Promise<number> {
  const { files, unreadable } = findFiles(paths.length === 0 ? ['.'] : paths, io.cwd);
  const { examination, failed } = await examineFiles(files, options, io);
  const problems = [...unreadable, ...failed];
  for (const problem of problems) io.err.write(`dryfit: ${visible(problem)}\n`);
  const { found, locate, units } = examination;
  const format = lengthFormat(options, units);
  const counts = countFindings(gatherFindings(found, locate));
  if (options.format === 'json') {
    io.out.write(`${JSON.stringify(findingsJson(found, examination.files, locate, format), undefined, 2)}\n`);
  } else {
    io.out.write(findingsText(found, { format, locate, paint: paintFor(io.out, io.env) }));
    io.out.write(`${summary(counts, examination.files)}\n`);
  }
  if (problems.length > 0) return MISUSE;
  return counts.errors > 0 || (options.strict && counts.warnings > 0) ? ERRORS : CLEAN;
}
