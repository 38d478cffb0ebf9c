import { resolve } from 'node:path';
import { planWork } from '@dryfit/engine';
import { labelPages, type Paper, type PlannedJob, plural, sheetPages, sheetsHtml } from '@dryfit/output';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import type { FindingOptions } from '../options.js';
import { isSheet, SHEETS } from '../output/drawings.js';
import { folderNames } from '../output/names.js';
import { sheetsPdf } from '../output/pdf.js';
import { type Written, writeWhole } from '../output/write.js';
import { sound } from '../sound.js';
import { jobOf } from './plan.js';

export interface SheetsOptions extends FindingOptions {
  readonly out: string;
  readonly paper?: Paper | undefined;
  readonly seconds?: number | undefined;
  readonly withErrors?: boolean | undefined;
}

/** Writes the printed sheets of a job, a page for each set-up and a cover, as HTML and as PDF. */
export async function sheets(file: string, name: string | undefined, options: SheetsOptions, io: Io): Promise<number> {
  if (options.out === '') throw new Misuse('--out is empty; name a folder');
  const found = await sound(file, options, io, 'written');
  if (found === undefined) return ERRORS;
  const { examination, format, counts } = found;
  const job = jobOf(examination, file, name);
  const planned: PlannedJob = {
    title: [`job ${job.name}`],
    items: job.items,
    plan: await planWork(job.items, (options.seconds ?? 10) * 1000),
    errors: counts.errors,
  };
  const pages = sheetPages(planned, options.paper ?? 'A4', format);
  const title = `Sheets of job ${job.name}`;
  const [folder] = folderNames([`job ${job.name}`]);
  const files: Written[] = [
    { path: `${folder}/${SHEETS}/sheets.html`, text: sheetsHtml(title, pages) },
    { path: `${folder}/${SHEETS}/sheets.pdf`, text: await sheetsPdf(title, pages) },
  ];
  const labels = labelPages({ name: job.name, items: job.items }, options.paper ?? 'A4', format);
  const labelTitle = `Labels of job ${job.name}`;
  if (labels.length > 0) {
    files.push(
      { path: `${folder}/${SHEETS}/labels.html`, text: sheetsHtml(labelTitle, labels) },
      { path: `${folder}/${SHEETS}/labels.pdf`, text: await sheetsPdf(labelTitle, labels) },
    );
  }
  await io.uninterrupted(() => writeWhole(resolve(io.cwd, options.out), resolve(io.cwd, file), files, isSheet));
  io.out.write(
    `wrote ${plural(pages.length + labels.length, 'page')} to ${options.out}: ${files.map(({ path }) => path).join(', ')}\n`,
  );
  return counts.errors > 0 ? ERRORS : CLEAN;
}
