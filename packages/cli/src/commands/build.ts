import { resolve } from 'node:path';
import type { LengthFormat } from '@dryfit/engine';
import {
  type Batch,
  cabinetLabel,
  fitJson,
  fitJsonText,
  plural,
  printText,
  tables,
  toCsv,
  toMarkdown,
  toPlain,
} from '@dryfit/output';
import type { Examination } from '../examination.js';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import type { FindingOptions } from '../options.js';
import { folderNames } from '../output/names.js';
import { isTable } from '../output/whose.js';
import { type Written, writeWhole } from '../output/write.js';
import { paintFor } from '../paint.js';
import { sound } from '../sound.js';
import { variants } from '../variants.js';

export interface BuildOptions extends FindingOptions {
  readonly out?: string | undefined;
  readonly withErrors?: boolean | undefined;
}

/** Writes, or without --out prints, the tables of every cabinet and job of a file. */
export async function build(file: string, options: BuildOptions, io: Io): Promise<number> {
  if (options.out === '') throw new Misuse('--out is empty; name a folder');
  const found = await sound(file, options, io, 'written');
  if (found === undefined) return ERRORS;
  const { examination, format, counts } = found;
  const sets = setsOf(examination, counts.errors);
  if (sets.length === 0) throw new Misuse(`there is no cabinet and no job in ${file}, so there is nothing to build`);
  if (options.out === undefined) print(sets, format, io);
  else await write(file, options.out, sets, examination, format, io);
  return counts.errors > 0 ? ERRORS : CLEAN;
}

/** One cabinet or job, whose tables go into one folder. */
interface TableSet {
  readonly kind: 'cabinet' | 'job';
  readonly batch: Batch;
}

function setsOf(examination: Examination, errors: number): TableSet[] {
  const cabinets = variants(examination).map(({ result }): TableSet => {
    return { kind: 'cabinet', batch: { title: cabinetLabel(result.fit), items: [{ result, count: 1 }], errors } };
  });
  const jobs = examination.jobs.map((job): TableSet => {
    return { kind: 'job', batch: { title: [`job ${job.name}`], items: job.items, errors } };
  });
  return [...cabinets, ...jobs];
}

function print(sets: readonly TableSet[], format: LengthFormat, io: Io): void {
  const paint = paintFor(io.out, io.env);
  const texts = sets.flatMap(({ batch }) => tables.map(({ make }) => toPlain(make(batch), format, paint)));
  io.out.write(texts.join('\n'));
}

async function write(
  file: string,
  out: string,
  sets: readonly TableSet[],
  examination: Examination,
  format: LengthFormat,
  io: Io,
): Promise<void> {
  // Folders are called after lengths in mm whatever the tables are printed in, so that a name stays the same.
  const folders = folderNames(sets.map(({ batch }) => printText(batch.title, { units: 'mm' })));
  const files = sets.flatMap(({ kind, batch }, i) => {
    const folder = folders[i] as string;
    const made = tables.map(({ make }) => make(batch));
    return [
      ...made.map((table): Written => ({ path: `${folder}/${table.name}.csv`, text: toCsv(table, format) })),
      ...made.map((table): Written => ({ path: `${folder}/${table.name}.md`, text: toMarkdown(table, format) })),
      {
        path: `${folder}/fit.json`,
        text: fitJsonText(fitJson(kind, batch, examination.found, examination.locate, format)),
      },
    ];
  });
  const { written, removed } = await io.uninterrupted(() =>
    writeWhole(resolve(io.cwd, out), resolve(io.cwd, file), files, isTable),
  );
  io.out.write(`wrote ${plural(written, 'file')} to ${out}: ${folders.join(', ')}\n`);
  if (removed > 0)
    io.out.write(`removed ${plural(removed, 'file')} of an earlier build of ${file} that no longer hold\n`);
}
