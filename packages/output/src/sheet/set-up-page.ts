import type { ChangeOver, LengthFormat, SetUp } from '@dryfit/engine';
import { MILLING_CAUTIONS } from '../cautions.js';
import type { PlannedJob } from '../plan/tables.js';
import { CHANGE_WORDS, minutes, slotsWord, surfaceWords } from '../plan/words.js';
import { printText } from '../print/length.js';
import { type Card, cardsOf, figure } from './cards.js';
import { fitted, wrapped } from './metrics.js';
import { MARGIN, PAPERS, type Page, type Paper, Pen } from './page.js';
import { drawPiece } from './piece.js';
import { settingBoxes } from './setting-boxes.js';

/** More tick boxes than this are not printed for one line of pieces; the count is. */
const MOST_BOXES = 24;

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

/** Heading of a card, and the least that its drawing takes, mm. */
const HEAD = 20;
const DRAWING = 44;

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

const listHeight = (card: Card, width: number, format: LengthFormat): number =>
  card.groups.reduce((sum, group) => sum + groupLines(group, width - 6, format).height, 0);

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
  pen.text(right, 18, jobTitle, fitted(jobTitle, inside * 0.38, 5, true), { bold: true, align: 'end' });
  pen.text(right, 23, `lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}`, 3.2, { align: 'end' });
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
  footer(pen, job, index, part < parts, foot, width, height);
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
    drawCard(
      pen,
      card,
      setUp,
      frame.x + place.column * (width + 4),
      frame.y + place.row * (height + 4),
      width,
      height,
      format,
    );
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

function drawCard(
  pen: Pen,
  card: Card,
  setUp: SetUp,
  x: number,
  y: number,
  width: number,
  height: number,
  format: LengthFormat,
): void {
  pen.box(x, y, width, height, 0.5);
  const heading = `${card.hand.toUpperCase()} FENCE: ${card.datum}`;
  pen.text(x + 3, y + 7.5, heading, fitted(heading, width - 6, 6, true), { bold: true });
  const lies = `${card.lies[0]}, ${card.toward} toward you`;
  const lines = wrapped(lies, width - 6, 4).slice(0, 2);
  for (const [i, line] of lines.entries()) pen.text(x + 3, y + 13 + i * 4.6, line, 4);
  const list = card.groups.map((group) => groupLines(group, width - 6, format));
  const listed = list.reduce((sum, one) => sum + one.height, 0);
  const drawTop = y + 20;
  drawPiece(
    pen,
    { x: x + 4, y: drawTop, width: width - 8, height: Math.max(26, height - 24 - listed) },
    card,
    setUp,
    format,
  );
  let at = y + height - listed;
  for (const one of list) {
    one.draw(pen, x + 3, at);
    at += one.height;
  }
}

/** A line of pieces with a box to tick for each. */
function groupLines(group: Card['groups'][number], width: number, format: LengthFormat) {
  const packer = group.packer ? `, packer ${figure(group.packer, format)}` : '';
  const weight = group.weight === '' ? '' : `, ${group.weight} each`;
  const name = `${group.count} × ${group.parts}`;
  const from = `${group.cabinet}${weight}${packer}`;
  const boxes = Math.min(group.count, MOST_BOXES);
  const perRow = Math.max(1, Math.floor(width / 5.4));
  const rows = Math.ceil(boxes / perRow);
  return {
    height: 9.6 + rows * 5.4,
    draw(pen: Pen, x: number, y: number): void {
      pen.text(x, y + 4, name, fitted(name, width, 4.4, true), { bold: true });
      pen.text(x, y + 7.6, from, fitted(from, width, 3));
      for (let i = 0; i < boxes; i++)
        pen.box(x + (i % perRow) * 5.4, y + 8.8 + Math.floor(i / perRow) * 5.4, 4.2, 4.2, 0.4);
      if (group.count > MOST_BOXES) pen.text(x + width, y + 4, `tick off ${group.count}`, 3, { align: 'end' });
    },
  };
}

function footer(
  pen: Pen,
  job: PlannedJob,
  index: number,
  more: boolean,
  top: number,
  width: number,
  height: number,
): void {
  const next = job.plan.setUps[index + 1];
  const inside = width - 2 * MARGIN;
  const words = more
    ? 'Then: the next sheet of this set-up'
    : next
      ? `Then set-up ${index + 2}: change ${changes(next.changed)}`
      : 'Then: nothing; this is the last set-up of the job';
  pen.box(MARGIN, top + 2, inside, 10, 0.9);
  pen.text(MARGIN + 3, top + 9, words, fitted(words, inside - 6, 5.4, true), { bold: true });
  const own = job.plan.setUps[index];
  const time = own
    ? `Reckoned: ${minutes(own.change)} min to change, ${minutes(own.mill)} min to mill ${own.slots} slots.`
    : '';
  pen.text(MARGIN, top + 16.4, time, 3);
  const cautions = ['Clean fence, bed and reference surfaces before each piece.', ...MILLING_CAUTIONS].join(' ');
  wrapped(cautions, inside, 3.1).forEach((line, i) => {
    if (top + 21 + i * 3.9 < height - 6) pen.text(MARGIN, top + 21 + i * 3.9, line, 3.1);
  });
}

export const changes = (list: readonly ChangeOver[]): string => {
  const words = list.map((one) => CHANGE_WORDS[one]);
  const last = words.at(-1) ?? 'nothing';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
};
