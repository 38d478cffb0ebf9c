import { resolve } from 'node:path';
import { labelPages, type Paper, plural, sheetPages } from '@dryfit/output';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import { folderNames } from '../output/names.js';
import { printed } from '../output/printed.js';
import { isSheet, SHEETS } from '../output/whose.js';
import { writeWhole } from '../output/write.js';
import { type PlanningOptions, planned } from '../planned.js';
import { sound } from '../sound.js';

export interface SheetsOptions extends PlanningOptions {
  readonly out: string;
  readonly paper?: Paper | undefined;
}

/** Writes what is printed for a job, as HTML and as PDF: a cover and a page for each set-up, and labels. */
export async function sheets(file: string, name: string | undefined, options: SheetsOptions, io: Io): Promise<number> {
  if (options.out === '') throw new Misuse('--out is empty; name a folder');
  const found = await sound(file, options, io, 'written');
  if (found === undefined) return ERRORS;
  const job = await planned(found, file, name, options);
  const paper = options.paper ?? 'A4';
  const pages = sheetPages(job, paper, found.format);
  const labels = labelPages(job, paper, found.format);
  const [folder] = folderNames([`job ${job.name}`]);
  const at = `${folder}/${SHEETS}`;
  const files = [
    ...(await printed(`${at}/sheets`, `Sheets of job ${job.name}`, pages)),
    ...(await printed(`${at}/labels`, `Labels of job ${job.name}`, labels)),
  ];
  await io.uninterrupted(() => writeWhole(resolve(io.cwd, options.out), resolve(io.cwd, file), files, isSheet));
  const names = files.map(({ path }) => path).join(', ');
  io.out.write(`wrote ${plural(pages.length + labels.length, 'page')} to ${options.out}: ${names}\n`);
  return job.errors > 0 ? ERRORS : CLEAN;
}
