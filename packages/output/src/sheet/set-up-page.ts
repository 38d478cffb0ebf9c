import type { LengthFormat } from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { plural } from '../findings/text.js';
import { shopOf } from '../plan/holding.js';
import type { PlannedJob } from '../plan/tables.js';
import { slotsWord, surfaceWords } from '../plan/words.js';
import { printText } from '../print/length.js';
import { cardsOf } from './cards.js';
import { firstPieceBlock } from './first-piece.js';
import { FOOTER, footer } from './footer.js';
import { holdWords } from './holding.js';
import { fitted, textWidth, wrapped } from './metrics.js';
import { errorsFound, type Frame, MARGIN, PAPERS, type Page, type Paper, Pen } from './page.js';
import { SETTING_BOXES, settingBoxes } from './setting-boxes.js';
import { shared } from './share.js';

/** The sheets of one set-up: one page, or more where its pieces are held in more ways than a page shows. */
export function setUpPages(job: PlannedJob, index: number, paper: Paper, format: LengthFormat): readonly Page[] {
  const setUp = job.plan.setUps[index];
  if (!setUp) return [];
  const [width, height] = PAPERS[paper];
  const inside = width - 2 * MARGIN;
  const first = firstPieceBlock(job, setUp, inside, format);
  const top = job.errors > 0 ? WARNED : PLAIN;
  const rooms = (sheet: number): Frame => {
    const y = top + SETTING_BOXES + HOLD + (sheet === 0 ? first.height + 1 : 0);
    return { x: MARGIN, y, width: inside, height: height - MARGIN - FOOTER - y };
  };
  const shares = shared(cardsOf(job, setUp, format), setUp, rooms, format);
  return shares.map((placed, part): Page => {
    const pen = new Pen();
    const title = heading(pen, job, index, [part + 1, shares.length], width, format);
    settingBoxes(
      pen,
      top,
      inside,
      setUp,
      placed.map(({ card }) => card),
      format,
    );
    holdLine(pen, holdWords(setUp, shopOf(job), format), top + SETTING_BOXES, inside);
    if (part === 0) first.draw(pen, MARGIN, top + SETTING_BOXES + HOLD);
    const room = rooms(part);
    for (const { block, frame } of placed) block.draw(pen, frame);
    footer(pen, job, index, part + 1 < shares.length, room.y + room.height, [width, height], format);
    return { width, height, title, marks: pen.marks };
  });
}

/** Where the boxes of a set-up begin: under its title, and under the warning where there are errors, mm. */
const PLAIN = 29;
const WARNED = 37.5;
/** What is said of holding takes so much, mm. */
const HOLD = 6;

/** Which set-up of which job it is, and what is milled in it. Returns what the page is called. */
function heading(
  pen: Pen,
  job: PlannedJob,
  index: number,
  [part, parts]: readonly [number, number],
  width: number,
  format: LengthFormat,
): string {
  const setUp = job.plan.setUps[index];
  const right = width - MARGIN;
  const inside = right - MARGIN;
  const sheet = parts > 1 ? `, sheet ${part} of ${parts}` : '';
  const title = `Set-up ${index + 1} of ${job.plan.setUps.length}${sheet}`;
  pen.text(MARGIN, 19, title, fitted(title, inside * 0.6, 9.4, true), { bold: true });
  const jobTitle = printText(job.title, format);
  pen.text(right, 16.4, jobTitle, fitted(jobTitle, inside * 0.38, 5, true), { bold: true, align: 'end' });
  madeLines(job, inside * 0.38, format).forEach((line, i) => {
    pen.text(right, 20 + i * 3.1, line, MADE, { align: 'end' });
  });
  const lengths = `lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}`;
  pen.text(right, 26.4, lengths, 3.2, { align: 'end' });
  if (setUp) {
    const { setting } = setUp;
    const what = `${setting.machine}: ${setting.connector}, ${slotsWord(setUp)} in the ${surfaceWords(setting)}`;
    pen.text(MARGIN, 26.4, what, fitted(what, inside - textWidth(lengths, 3.2) - 3, 6, true), { bold: true });
  }
  if (job.errors > 0) {
    const warning = `${errorsFound(job.errors)}: DO NOT MILL FROM THIS SHEET`;
    pen.box(MARGIN, 28.8, inside, 7, 0.8);
    pen.text(width / 2, 33.8, warning, 4, { bold: true, align: 'middle' });
  }
  return `${jobTitle}, ${title}`;
}

const MADE = 2.8;

/** Which cabinets are made, on two lines; of more than have room for their names how many. */
function madeLines({ items }: PlannedJob, width: number, format: LengthFormat): readonly string[] {
  const made = items.map(({ result, count }) => `${count} × ${printText(cabinetLabel(result.fit), format)}`).join(', ');
  const lines = wrapped(made, width, MADE);
  if (lines.length <= 2 && lines.every((line) => textWidth(line, MADE) <= width)) return lines;
  const all = items.reduce((sum, { count }) => sum + count, 0);
  return [`${plural(all, 'cabinet')}, ${items.length} kinds: see the cover`];
}

/** What holds the pieces of the set-up, and how the machine goes from line to line. */
const holdLine = (pen: Pen, words: string, y: number, inside: number): void =>
  pen.text(MARGIN, y + 4.2, words, fitted(words, inside, 4.6, true), { bold: true });
