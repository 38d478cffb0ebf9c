import { resolve } from 'node:path';
import { labelPages, type Paper, type PlannedJob, plural, setUpPages, sheetPages } from '@dryfit/output';
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
  /** The one set-up that is wanted, from 1; all of them, cover and labels unless said. */
  readonly setUp?: number | undefined;
}

/** Writes what is printed for a job, as HTML and as PDF: a cover and a page for each set-up, and labels; or one set-up alone. */
export async function sheets(file: string, name: string | undefined, options: SheetsOptions, io: Io): Promise<number> {
  if (options.out === '') throw new Misuse('--out is empty; name a folder');
  const found = await sound(file, options, io, 'written');
  if (found === undefined) return ERRORS;
  const job = await planned(found, file, name, options);
  const paper = options.paper ?? 'A4';
  const one = options.setUp;
  if (one !== undefined) checkSetUp(job, one);
  const pages =
    one === undefined ? sheetPages(job, paper, found.format) : setUpPages(job, one - 1, paper, found.format);
  const labels = one === undefined ? labelPages(job, paper, found.format) : [];
  const [folder] = folderNames([`job ${job.name}`]);
  const at = `${folder}/${SHEETS}`;
  const files = [
    ...(one === undefined
      ? await printed(`${at}/sheets`, `Sheets of job ${job.name}`, pages)
      : await printed(`${at}/set-up-${one}`, `Set-up ${one} of job ${job.name}`, pages)),
    ...(await printed(`${at}/labels`, `Labels of job ${job.name}`, labels)),
  ];
  // One set-up leaves the other sheets as they are; all of them take it away with whatever else is older.
  const isOurs = (path: string) => isSheet(path) && (one === undefined || files.some((made) => made.path === path));
  await io.uninterrupted(() => writeWhole(resolve(io.cwd, options.out), resolve(io.cwd, file), files, isOurs));
  const names = files.map(({ path }) => path).join(', ');
  io.out.write(`wrote ${plural(pages.length + labels.length, 'page')} to ${options.out}: ${names}\n`);
  return job.errors > 0 ? ERRORS : CLEAN;
}

/** @throws Misuse if a job has no such set-up */
function checkSetUp({ name, plan: { setUps } }: PlannedJob & { readonly name: string }, one: number): void {
  if (setUps[one - 1]) return;
  const has = setUps.length === 0 ? 'it has none' : setUps.length === 1 ? 'it has 1' : `it has 1 to ${setUps.length}`;
  throw new Misuse(`there is no set-up ${one} in job ${name}; ${has}`);
}
