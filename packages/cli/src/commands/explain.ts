import { cabinetLabel, countFindings, explainable, explainedText, explain as explainIn, plural } from '@dryfit/output';
import { chosen } from '../chosen.js';
import { examineFile } from '../examine.js';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import { type FindingOptions, lengthFormat } from '../options.js';
import { paintFor } from '../paint.js';

export interface ExplainOptions extends FindingOptions {
  readonly cabinet?: string | undefined;
}

/** Prints why a part has its sizes and where its slots are, or both halves of a joint. */
export async function explain(
  file: string,
  words: readonly string[],
  options: ExplainOptions,
  io: Io,
): Promise<number> {
  const name = words.join(' ');
  const examination = await examineFile(file, options, io);
  const format = lengthFormat(options, examination.units);
  const results = chosen(examination, options.cabinet, file);
  const style = { format, locate: examination.locate, paint: paintFor(io.out, io.env) };
  const texts = results.flatMap((result) =>
    explainIn(result, name).map((explained) => explainedText(explained, cabinetLabel(result.fit), style)),
  );
  if (texts.length === 0) throw new Misuse(unknown(name, results));
  io.out.write(texts.join('\n'));
  const { errors } = countFindings(examination.found);
  if (errors === 0) return CLEAN;
  io.err.write(`dryfit: ${file} has ${plural(errors, 'error')}; dryfit check ${file} tells them\n`);
  return ERRORS;
}

function unknown(name: string, results: ReturnType<typeof chosen>): string {
  const names = [...new Set(results.flatMap((result) => explainable(result)))];
  return `there is no part or joint called ${name}; there is ${names.join(', ')}`;
}
