import type { LengthFormat, SetUp } from '@dryfit/engine';
import { type Card, figures, type Group } from './cards.js';
import { fitted, textWidth, wrapped } from './metrics.js';
import type { Block, Frame, Pen } from './page.js';
import { drawPiece } from './piece.js';

/** More pieces than this get a box for every ten. */
const MOST_BOXES = 60;
const BOX = 5.4;
/** White along the edges of a card, mm. */
const EDGE = 3;

/** A card: at which fence, how the piece lies and is held, the piece drawn, and the pieces to tick off. */
export function drawCard(pen: Pen, card: Card, setUp: SetUp, frame: Frame, format: LengthFormat): void {
  const { x, y, width, height } = frame;
  const inside = width - 2 * EDGE;
  pen.box(x, y, width, height, 0.5);
  const head = headOf(card, setUp, inside, format);
  head.draw(pen, x + EDGE, y);
  const list = card.groups.map((group) => groupLines(group, inside));
  const listed = list.reduce((sum, one) => sum + one.height, 0);
  const room = { x: x + 4, y: y + head.height, width: width - 8, height: height - head.height - 2 - listed };
  drawPiece(pen, { ...room, height: Math.max(26, room.height) }, card, setUp, format);
  let at = y + height - listed;
  for (const one of list) {
    one.draw(pen, x + EDGE, at);
    at += one.height;
  }
}

/** What the words of a card take over and under its drawing, mm. */
export function wordsHeight(card: Card, setUp: SetUp, width: number, format: LengthFormat): number {
  const inside = width - 2 * EDGE;
  const listed = card.groups.reduce((sum, group) => sum + groupLines(group, inside).height, 0);
  return headOf(card, setUp, inside, format).height + 2 + listed;
}

/** What stands over the drawing: fence, what looks where, what is pressed where, which lines. */
function headOf(card: Card, setUp: SetUp, width: number, format: LengthFormat): Block {
  const { half } = card.operation;
  const heading = card.hasFence
    ? `${card.hand.toUpperCase()} FENCE: ${card.datum}`
    : `MARK OUT FROM: ${card.datum}${half.turn ? '' : `, at your ${card.hand}`}`;
  const lies = `${card.toward} toward you, ${loud(card.lies[0])}`;
  const press = wrapped(card.press, width, PRESS).slice(0, 3);
  const only = onlyLines(card, setUp, format);
  const height = 14.6 + press.length * 4.2 + (only === '' ? 0 : 5.4);
  return {
    height,
    draw(pen, x, y) {
      pen.text(x, y + 7.2, heading, fitted(heading, width, 6, true), { bold: true });
      pen.text(x, y + 12.9, lies, fitted(lies, width, 4.6, true), { bold: true });
      for (const [i, line] of press.entries()) pen.text(x, y + 17.6 + i * 4.2, line, PRESS);
      pen.text(x, y + height - 0.8, only, fitted(only, width, 4.4, true), { bold: true });
    },
  };
}

const PRESS = 3.4;

/** UP and DOWN are what must not be mixed up. */
const loud = (words: string): string => words.replace(/ (up|down)$/, (way) => way.toUpperCase());

/** Which of the lines that are set are used; nothing where all are. */
function onlyLines(card: Card, { setting }: SetUp, format: LengthFormat): string {
  if (card.lines.length === setting.lines.length) return '';
  return `only at ${figures(card.lines, format)}`;
}

/** A line of pieces with a box to tick for each, or for every ten of very many; beside their name, if there is room. */
function groupLines(group: Group, width: number): Block {
  const weight = group.weight === '' ? '' : `, ${group.weight}${group.count > 1 ? ' each' : ''}`;
  const name = group.again ? `the same ${group.count} × ${group.parts} again` : `${group.count} × ${group.parts}`;
  const tens = group.count > MOST_BOXES ? ', a box for every ten' : '';
  const from = `${group.cabinet}${weight}${tens}`;
  const boxes = group.count > MOST_BOXES ? Math.ceil(group.count / 10) : group.count;
  const beside = textWidth(name, NAME, true) + 4 + boxes * BOX <= width;
  const perRow = beside ? boxes : Math.max(1, Math.floor(width / BOX));
  const small = wrapped(
    [group.history, group.beside, group.packer].filter((one) => one !== '').join(' '),
    width,
    SMALL,
  );
  const words = 8.8 + small.length * 3.6;
  return {
    height: words + (beside ? 1 : 1.4 + Math.ceil(boxes / perRow) * BOX),
    draw(pen: Pen, x: number, y: number): void {
      pen.text(x, y + 4.4, name, fitted(name, width, NAME, true), { bold: true });
      pen.text(x, y + 8.2, from, fitted(from, width, SMALL));
      for (const [i, line] of small.entries()) pen.text(x, y + 11.8 + i * 3.6, line, SMALL);
      const [left, top] = beside ? [x + width - boxes * BOX + 1.2, y + 0.8] : [x, y + words + 0.4];
      for (let i = 0; i < boxes; i++)
        pen.box(left + (i % perRow) * BOX, top + Math.floor(i / perRow) * BOX, 4.2, 4.2, 0.4);
    },
  };
}

const NAME = 4.6;
const SMALL = 3.1;
