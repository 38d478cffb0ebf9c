import type { LengthFormat, SetUp } from '@dryfit/engine';
import { type Card, figure, figures, type Group } from './cards.js';
import { fitted, wrapped } from './metrics.js';
import type { Pen } from './page.js';
import { drawPiece } from './piece.js';

/** What stands over the drawing of a card takes so much, mm. */
export const HEAD = 25;
/** More pieces than this get a box for every ten. */
const MOST_BOXES = 60;
const BOX = 5.4;

/** A card: at which fence, how the piece lies, the piece drawn, and the pieces to tick off. */
export function drawCard(
  pen: Pen,
  card: Card,
  setUp: SetUp,
  frame: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  format: LengthFormat,
): void {
  const { x, y, width, height } = frame;
  pen.box(x, y, width, height, 0.5);
  const fence = card.operation.half.turn ? 'MARK OUT FROM' : `${card.hand.toUpperCase()} FENCE`;
  const heading = `${fence}: ${card.datum}`;
  pen.text(x + 3, y + 7.5, heading, fitted(heading, width - 6, 6, true), { bold: true });
  const lies = `${card.lies.map(loud).join(', ')}; ${card.toward} toward you`;
  for (const [i, line] of wrapped(lies, width - 6, 3.9)
    .slice(0, 2)
    .entries())
    pen.text(x + 3, y + 12.6 + i * 4.4, line, 3.9);
  const only = onlyLines(card, setUp, format);
  pen.text(x + 3, y + 21.8, only, fitted(only, width - 6, 3.9, true), { bold: true });
  const list = card.groups.map((group) => groupLines(group, width - 6, format));
  const listed = list.reduce((sum, one) => sum + one.height, 0);
  const drawing = { x: x + 4, y: y + HEAD, width: width - 8, height: Math.max(26, height - HEAD - 4 - listed) };
  drawPiece(pen, drawing, card, setUp, format);
  let at = y + height - listed;
  for (const one of list) {
    one.draw(pen, x + 3, at);
    at += one.height;
  }
}

/** What the pieces of a card take under its drawing, mm. */
export const listHeight = (card: Card, width: number, format: LengthFormat): number =>
  card.groups.reduce((sum, group) => sum + groupLines(group, width - 6, format).height, 0);

/** UP and DOWN are what must not be mixed up. */
const loud = (words: string): string => words.replace(/ (up|down)$/, (way) => way.toUpperCase());

/** Which of the lines that are set are used; nothing where all are. */
function onlyLines(card: Card, { setting }: SetUp, format: LengthFormat): string {
  if (card.lines.length === setting.lines.length) return '';
  return `only at ${figures(card.lines, format)}`;
}

/** A line of pieces with a box to tick for each, or for every ten of very many. */
function groupLines(group: Group, width: number, format: LengthFormat) {
  const packer = group.packer ? `, packer ${figure(group.packer, format)}` : '';
  const weight = group.weight === '' ? '' : `, ${group.weight} each`;
  const name = group.again ? `the same ${group.count} × ${group.parts} again` : `${group.count} × ${group.parts}`;
  const tens = group.count > MOST_BOXES ? ', a box for every ten' : '';
  const from = `${group.cabinet}${weight}${packer}${tens}`;
  const boxes = group.count > MOST_BOXES ? Math.ceil(group.count / 10) : group.count;
  const perRow = Math.max(1, Math.floor(width / BOX));
  return {
    height: 9.6 + Math.ceil(boxes / perRow) * BOX,
    draw(pen: Pen, x: number, y: number): void {
      pen.text(x, y + 4, name, fitted(name, width, 4.4, true), { bold: true });
      pen.text(x, y + 7.6, from, fitted(from, width, 3));
      for (let i = 0; i < boxes; i++)
        pen.box(x + (i % perRow) * BOX, y + 8.8 + Math.floor(i / perRow) * BOX, 4.2, 4.2, 0.4);
    },
  };
}
