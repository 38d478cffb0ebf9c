import type { LengthFormat, SetUp } from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { shopOf } from '../plan/holding.js';
import type { PlannedJob } from '../plan/tables.js';
import { slotsWord, surfaceWords } from '../plan/words.js';
import { printText } from '../print/length.js';
import { drawCard } from './card.js';
import { type Card, cardsOf } from './cards.js';
import { firstPieceBlock } from './first-piece.js';
import { FOOTER, footer } from './footer.js';
import { holdWords } from './holding.js';
import { fitted } from './metrics.js';
import { errorsFound, type Frame, MARGIN, PAPERS, type Page, type Paper, Pen } from './page.js';
import { SETTING_BOXES, settingBoxes } from './setting-boxes.js';
import { BETWEEN, cardSize, shared } from './share.js';

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
  return shares.map((cards, part): Page => {
    const pen = new Pen();
    const title = heading(pen, job, index, [part + 1, shares.length], width, format);
    settingBoxes(pen, top, inside, setUp, cards, format);
    holdLine(pen, holdWords(setUp, shopOf(job), format), top + SETTING_BOXES, inside);
    if (part === 0) first.draw(pen, MARGIN, top + SETTING_BOXES + HOLD);
    const room = rooms(part);
    cardGrid(pen, cards, setUp, room, format);
    footer(pen, job, index, part + 1 < shares.length, room.y + room.height, [width, height], format);
    return { width, height, title, marks: pen.marks };
  });
}

/** Where the boxes of a set-up begin: under its title, and under the warning where there are errors, mm. */
const PLAIN = 35;
const WARNED = 42;
/** What is said of holding takes so much, mm. */
const HOLD = 6.6;

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
  pen.text(MARGIN, 22, title, fitted(title, inside * 0.6, 10, true), { bold: true });
  const jobTitle = printText(job.title, format);
  pen.text(right, 16, jobTitle, fitted(jobTitle, inside * 0.38, 5, true), { bold: true, align: 'end' });
  const made = job.items
    .map(({ result, count: n }) => `${n} × ${printText(cabinetLabel(result.fit), format)}`)
    .join(', ');
  pen.text(right, 20.4, made, fitted(made, inside * 0.38, 3.2), { align: 'end' });
  pen.text(right, 24.4, `lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}`, 3.2, { align: 'end' });
  if (setUp) {
    const { setting } = setUp;
    const what = `${setting.machine}: ${setting.connector}, ${slotsWord(setUp)} in the ${surfaceWords(setting)}`;
    pen.text(MARGIN, 31, what, fitted(what, inside, 6, true), { bold: true });
  }
  if (job.errors > 0) {
    const warning = `${errorsFound(job.errors)}: DO NOT MILL FROM THIS SHEET`;
    pen.box(MARGIN, 33, inside, 7, 0.8);
    pen.text(width / 2, 38, warning, 4, { bold: true, align: 'middle' });
  }
  return `${jobTitle}, ${title}`;
}

/** What holds the pieces of the set-up, and how the machine goes from line to line. */
const holdLine = (pen: Pen, words: string, y: number, inside: number): void =>
  pen.text(MARGIN, y + 4.4, words, fitted(words, inside, 4.6, true), { bold: true });

function cardGrid(pen: Pen, cards: readonly Card[], setUp: SetUp, room: Frame, format: LengthFormat): void {
  const { columns, width, height } = cardSize(Math.max(1, cards.length), room);
  cards.forEach((card, i) => {
    const place = slotOf(cards, i, columns);
    const [x, y] = [room.x + place.column * (width + BETWEEN), room.y + place.row * (height + BETWEEN)];
    drawCard(pen, card, setUp, { x, y, width, height }, format);
  });
}

/** Pieces for the left fence stand on the left and for the right one on the right, as far as there are as many of both. */
function slotOf(
  cards: readonly Card[],
  index: number,
  columns: number,
): { readonly column: number; readonly row: number } {
  const lefts = cards.filter(({ hand }) => hand === 'left').length;
  const rights = cards.length - lefts;
  if (columns === 1) return { column: 0, row: index };
  if (Math.abs(lefts - rights) > 1) return { column: index % 2, row: Math.floor(index / 2) };
  return index < lefts ? { column: 0, row: index } : { column: 1, row: index - lefts };
}
