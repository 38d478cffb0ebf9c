import { resolve } from 'node:path';
import { likeIt, planWork, remade } from '@dryfit/engine';
import {
  cabinetLabel,
  labelPage,
  type Paper,
  plural,
  printText,
  type Remake,
  remakePages,
  remakeWarnings,
} from '@dryfit/output';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import { folderName, folderNames } from '../output/names.js';
import { printed } from '../output/printed.js';
import { isRemake, REMAKES } from '../output/whose.js';
import { writeWhole } from '../output/write.js';
import { paintFor } from '../paint.js';
import { pieceNamed } from '../piece.js';
import { inTime, jobOf, type PlanningOptions } from '../planned.js';
import { sound } from '../sound.js';

export interface RemakeOptions extends PlanningOptions {
  readonly out: string;
  readonly paper?: Paper | undefined;
  /** Which of the cabinets that are alike it is of, from 1. */
  readonly number?: number | undefined;
}

/** Writes what is printed for one spoilt piece of a job: how it is cut, its own set-ups with the job's settings, its label. */
export async function remake(
  file: string,
  name: string,
  words: readonly string[],
  options: RemakeOptions,
  io: Io,
): Promise<number> {
  if (options.out === '') throw new Misuse('--out is empty; name a folder');
  const found = await sound(file, options, io, 'written');
  if (found === undefined) return ERRORS;
  const { format, examination } = found;
  const { errors } = found.counts;
  const job = jobOf(examination, file, name);
  const { index, item, part, copy } = pieceNamed(words.join(' '), job, options.number, examination.units);
  const planning = inTime(options.seconds, job.orders);
  const whole = await planWork(job.items, planning);
  const alone = remade(whole, job.items, index, part.id);
  if (!alone) throw new Misuse(`there is no ${part.id} in job ${job.name}`);
  const cabinet = printText(cabinetLabel(item.result.fit), { units: 'mm' });
  const title = `Remake: ${part.id} of ${cabinet}, job ${job.name}`;
  const piece: Remake = {
    job: { title: [title], items: [alone], plan: await planWork([alone], planning), errors },
    item,
    part,
    like: likeIt(part, item.result.fit.parts),
  };
  const paper = options.paper ?? 'A4';
  const pages = remakePages(piece, paper, format);
  const label = labelPage({ name: job.name, errors }, item, { part: part.id, copy }, paper, format);
  const [folder] = folderNames([`job ${job.name}`]);
  const at = `${folder}/${REMAKES}/${folderName(`${part.id} of ${cabinet}`)}`;
  const files = [
    ...(await printed(at, title, pages)),
    ...(await printed(`${at}-label`, `Label of ${part.id}`, [label])),
  ];
  // Pieces that were made again before keep their sheets.
  const isThis = (path: string) => isRemake(path) && files.some((one) => one.path === path);
  await io.uninterrupted(() => writeWhole(resolve(io.cwd, options.out), resolve(io.cwd, file), files, isThis));
  const paint = paintFor(io.err, io.env);
  for (const warning of remakeWarnings(piece, format)) io.err.write(`${paint.warning('see to')}: ${warning}\n`);
  if (options.number === undefined && item.count > 1)
    io.err.write(`the label is for 1 of ${item.count}; --number says for which\n`);
  const names = files.map(({ path }) => path).join(', ');
  io.out.write(`wrote ${plural(pages.length + 1, 'page')} to ${options.out}: ${names}\n`);
  return errors > 0 ? ERRORS : CLEAN;
}
