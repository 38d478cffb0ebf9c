import type { LengthFormat, SetUp } from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import type { PlannedJob } from '../plan/tables.js';
import { slotsWord, surfaceWords } from '../plan/words.js';
import { printText } from '../print/length.js';
import { drawCard, HEAD, listHeight } from './card.js';
import { type Card, cardsOf } from './cards.js';
import { footer } from './footer.js';
import { fitted } from './metrics.js';
import { MARGIN, PAPERS, type Page, type Paper, Pen } from './page.js';
import { settingBoxes } from './setting-boxes.js';

/** The sheets of one set-up: one page, or more where its pieces are held in more ways than a page shows. */
export function setUpPages(job: PlannedJob, index: number, paper: Paper, format: LengthFormat): readonly Page[] {
  const setUp = job.plan.setUps[index];
  if (!setUp) return [];
  const shares = shared(cardsOf(job, setUp, format), paper, job.errors > 0, format);
  return shares.map((share, part) => page(job, setUp, index, share, [part + 1, shares.length], paper, format));
}

/** Room on a sheet for its cards. */
function roomFor(paper: Paper, warned: boolean) {
  const [width, height] = PAPERS[paper];
  const top = (warned ? 42 : 35) + 49;
  return { x: MARGIN, y: top, width: width - 2 * MARGIN, height: height - MARGIN - 34 - top };
}

/** Width and height of a card where so many stand on a sheet. */
function cardSize(count: number, room: { readonly width: number; readonly height: number }) {
  const columns = count > 1 ? 2 : 1;
  const rows = Math.ceil(count / columns);
  return { columns, width: (room.width - 4 * (columns - 1)) / columns, height: (room.height - 4 * (rows - 1)) / rows };
}

/** The least that the drawing of a card takes, mm. */
const DRAWING = 40;

/**
 * The cards, shared out to sheets: as many on each as have room for their drawing and for all their pieces. A card whose
 * pieces are too many for a sheet is carried on.
 */
function shared(
  cards: readonly Card[],
  paper: Paper,
  warned: boolean,
  format: LengthFormat,
): readonly (readonly Card[])[] {
  const room = roomFor(paper, warned);
  const fits = (card: Card, count: number): boolean => {
    const { width, height } = cardSize(count, room);
    return HEAD + DRAWING + listHeight(card, width, format) <= height;
  };
  const split = cards.flatMap((card) => {
    const parts: Card[] = [];
    for (const group of card.groups) {
      const last = parts.at(-1);
      const longer = last && { ...last, groups: [...last.groups, group] };
      if (longer && fits(longer, 1)) parts[parts.length - 1] = longer;
      else parts.push({ ...card, groups: [group] });
    }
    return parts;
  });
  const shares: Card[][] = [];
  for (let at = 0; at < split.length; ) {
    const count =
      [4, 2, 1].find((n) => split.slice(at, at + n).every((card) => fits(card, Math.min(n, split.length - at)))) ?? 1;
    shares.push(split.slice(at, at + count));
    at += count;
  }
  return shares.length > 0 ? shares : [[]];
}

function page(
  job: PlannedJob,
  setUp: SetUp,
  index: number,
  cards: readonly Card[],
  [part, parts]: readonly [number, number],
  paper: Paper,
  format: LengthFormat,
): Page {
  const [width, height] = PAPERS[paper];
  const pen = new Pen();
  const right = width - MARGIN;
  const inside = right - MARGIN;
  const { setting } = setUp;
  const count = job.plan.setUps.length;
  const sheet = parts > 1 ? `, sheet ${part} of ${parts}` : '';
  const title = `Set-up ${index + 1} of ${count}${sheet}`;

  pen.text(MARGIN, 22, title, fitted(title, inside * 0.6, 10, true), { bold: true });
  const jobTitle = printText(job.title, format);
  pen.text(right, 16, jobTitle, fitted(jobTitle, inside * 0.38, 5, true), { bold: true, align: 'end' });
  const made = job.items
    .map(({ result, count: n }) => `${n} × ${printText(cabinetLabel(result.fit), format)}`)
    .join(', ');
  pen.text(right, 20.4, made, fitted(made, inside * 0.38, 3.2), { align: 'end' });
  pen.text(right, 24.4, `lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}`, 3.2, { align: 'end' });
  const what = `${setting.machine}: ${setting.connector}, ${slotsWord(setUp)} in the ${surfaceWords(setting)}`;
  pen.text(MARGIN, 31, what, fitted(what, inside, 6, true), { bold: true });
  if (job.errors > 0) {
    const warning = `${job.errors} ${job.errors === 1 ? 'ERROR' : 'ERRORS'} FOUND: DO NOT MILL FROM THIS SHEET`;
    pen.box(MARGIN, 33, inside, 7, 0.8);
    pen.text(width / 2, 38, warning, 4, { bold: true, align: 'middle' });
  }
  const boxesTop = job.errors > 0 ? 42 : 35;
  settingBoxes(pen, boxesTop, inside, setUp, cards, format);
  const room = roomFor(paper, job.errors > 0);
  cardGrid(pen, cards, setUp, room, format);
  const foot = room.y + room.height;
  footer(pen, job, index, part < parts, foot, [width, height], format);
  return { width, height, title: `${jobTitle}, ${title}`, marks: pen.marks };
}

function cardGrid(
  pen: Pen,
  cards: readonly Card[],
  setUp: SetUp,
  frame: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  format: LengthFormat,
): void {
  const { columns, width, height } = cardSize(Math.max(1, cards.length), frame);
  cards.forEach((card, i) => {
    const place = slotOf(cards, i, columns);
    const [x, y] = [frame.x + place.column * (width + 4), frame.y + place.row * (height + 4)];
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
