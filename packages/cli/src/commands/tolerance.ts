import { type Batch, type FitResult, fromBatch, type Rational, reckon, type Units } from '@dryfit/engine';
import { MILLIMETRES, readNumber } from '@dryfit/language';
import { batchText, countFindings, plural, toleranceJson, toleranceText } from '@dryfit/output';
import { chosen } from '../chosen.js';
import { examineFile } from '../examine.js';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import { type FindingOptions, lengthFormat } from '../options.js';
import { paintFor } from '../paint.js';

export interface ToleranceOptions extends FindingOptions {
  readonly cabinet?: string | undefined;
  readonly samples: number;
  readonly seed: number;
  readonly format?: 'text' | 'json' | undefined;
  /** As written: "birch18=17.4". */
  readonly measure?: readonly string[] | undefined;
}

/** Prints how far off cabinets may come, from what, and what another batch of sheets does to them. */
export async function tolerance(file: string, options: ToleranceOptions, io: Io): Promise<number> {
  const examination = await examineFile(file, options, io);
  const format = lengthFormat(options, examination.units);
  const results = chosen(examination, options.cabinet, file);
  const measured = batchOf(options.measure ?? [], examination.units, results);
  const { samples, seed } = options;
  const asked = results.map(({ spec }) => {
    const batch = new Map([...measured].filter(([name]) => spec.shop.materials.has(name)));
    if (batch.size === 0) return { reckoned: reckon(spec) };
    return { reckoned: reckon(fromBatch(spec, batch)), batch: { planned: spec, measured: batch } };
  });
  const { locate } = examination;
  if (options.format === 'json') {
    io.out.write(`${JSON.stringify(toleranceJson(asked, { format, locate, samples, seed }), undefined, 2)}\n`);
  } else {
    const paint = paintFor(io.out, io.env);
    const texts = asked.flatMap(({ reckoned, batch }) => [
      ...(batch ? [batchText(batch.planned, batch.measured, format, paint)] : []),
      toleranceText(reckoned, { format, locate, paint, samples, seed }),
    ]);
    io.out.write(texts.join('\n'));
  }
  const { errors } = countFindings(examination.found);
  if (errors === 0) return CLEAN;
  io.err.write(`dryfit: ${file} has ${plural(errors, 'error')}; dryfit check ${file} tells them\n`);
  return ERRORS;
}

/** Plain numbers are in the units of the file. */
function batchOf(words: readonly string[], units: Units, results: readonly FitResult[]): Batch {
  const batch = new Map<string, Rational>();
  const known = [...new Set(results.flatMap(({ fit }) => fit.parts.map(({ material }) => material)))].sort();
  const layers = results.flatMap(({ spec }) => known.flatMap((name) => spec.shop.materials.get(name)?.layers ?? []));
  for (const word of words) {
    const [, name = '', figure = ''] = /^\s*([^=]+?)\s*=\s*(.+?)\s*$/.exec(word) ?? [];
    const { value, unit, unhyphened } = readNumber(figure);
    if (name === '' || !value || unhyphened !== undefined || value.sign() <= 0)
      throw new Misuse(`--measure takes a material and what it measures, such as --measure birch18=17.4, not ${word}`);
    if (![...known, ...layers].includes(name))
      throw new Misuse(`no part is of a material called ${name}; there is ${known.join(', ')}`);
    if (batch.has(name)) throw new Misuse(`--measure gives ${name} twice`);
    batch.set(name, value.mul(MILLIMETRES[unit ?? units]));
  }
  return batch;
}
