import type { LengthFormat, SetUp } from '@dryfit/engine';
import { type Card, figure, figures, type Group } from './cards.js';
import { fitted, textWidth, wrapped } from './metrics.js';
import type { Block, Frame, Pen } from './page.js';
import { pieceDrawing } from './piece.js';

/** More pieces than this get a box for every ten. */
const MOST_BOXES = 60;
const BOX = 5.4;
/** White along the edges of a card, mm. */
const EDGE = 3;

/** A card: at which fence, how the piece lies and is held, the piece drawn, and the pieces to tick off. */
export interface CardBlock {
  /** The least height at which it can be read, and the one beyond which it gains nothing, mm. */
  readonly least: number;
  readonly most: number;
  draw(pen: Pen, frame: Frame): void;
}

/** What a card leaves for its drawing, mm. */
export const drawingWidth = (width: number): number => width - 2 * EDGE;

/** @param scale how many times smaller its piece is drawn */
export function cardBlock(card: Card, setUp: SetUp, width: number, scale: number, format: LengthFormat): CardBlock {
  const inside = drawingWidth(width);
  const piece = pieceDrawing(card, setUp, inside, scale, format);
  const head = headOf(card, setUp, piece.scale, inside, format);
  const list = card.groups.map((group) => groupLines(group, inside));
  const listed = list.reduce((sum, one) => sum + one.height, 0);
  const words = head.height + listed + 1;
  return {
    least: words + piece.least,
    most: words + piece.most,
    draw(pen, { x, y, height }) {
      pen.box(x, y, width, height, 0.5);
      head.draw(pen, x + EDGE, y);
      piece.draw(pen, { x: x + EDGE, y: y + head.height, width: inside, height: height - words });
      let at = y + height - listed;
      for (const one of list) {
        one.draw(pen, x + EDGE, at);
        at += one.height;
      }
    },
  };
}

/** What stands over the drawing: fence, what looks where, what is pressed where, which lines; in the corner the scale. */
function headOf(card: Card, setUp: SetUp, scale: readonly string[], width: number, format: LengthFormat): Block {
  const { half } = card.operation;
  const order = card.all > 1 ? `${card.number}. ` : '';
  const heading = card.hasFence
    ? `${order}${card.hand.toUpperCase()} FENCE: ${card.datum}`
    : `${order}MARK OUT FROM: ${card.datum}${half.turn ? '' : `, at your ${card.hand}`}`;
  const lies = `${card.toward} toward you, ${loud(card.lies[0])}`;
  const corner = Math.max(...scale.map((words) => textWidth(words, SCALE))) + 2;
  const lines: Line[] = [
    ...linesOf(heading, width - corner, 5.2, true, 6),
    ...linesOf(lies, width, 4.4, true, 5),
    ...linesOf(card.press, width, 3.4, false, 4),
    ...linesOf(atStop(card, format), width, 4.2, true, 4.8),
    ...linesOf(onlyLines(card, setUp, format), width, 4.2, true, 4.8),
  ];
  return {
    height: lines.reduce((sum, { step }) => sum + step, 0) + 1.6,
    draw(pen, x, y) {
      for (const [i, words] of scale.entries()) pen.text(x + width, y + 3.8 + i * 3, words, SCALE, { align: 'end' });
      let at = y;
      for (const { text, size, bold, step } of lines) {
        at += step;
        pen.text(x, at, text, size, { bold });
      }
    },
  };
}

interface Line {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
  readonly step: number;
}

/** A text set a little smaller where that is enough for one line, else in several. */
function linesOf(text: string, width: number, size: number, bold: boolean, step: number): Line[] {
  if (text === '') return [];
  const one = fitted(text, width, size, bold);
  if (one >= size * 0.85) return [{ text, size: one, bold, step }];
  return wrapped(text, width, size, bold).map((line) => ({ text: line, size, bold, step }));
}

/** UP and DOWN are what must not be mixed up. */
const loud = (words: string): string => words.replace(/ (up|down)$/, (way) => way.toUpperCase());

/** What lies between the stop and the piece, which is not there for the other pieces of the set-up. */
function atStop({ operation: { half }, stopEnd = 'end' }: Card, format: LengthFormat): string {
  const block = half.stop?.block;
  if (!block) return '';
  const of = block.like ? ` (offcut of ${block.like.material})` : '';
  return `BLOCK ${figure(block.width, format)}${of} between the stop and the ${stopEnd}`;
}

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
  const boxes = group.count > MOST_BOXES ? Math.ceil(group.count / 10) : group.count;
  const beside = textWidth(name, NAME, true) + 4 + boxes * BOX <= width;
  const perRow = beside ? boxes : Math.max(1, Math.floor(width / BOX));
  const names = beside ? [name] : wrapped(name, width, NAME, true);
  const from = `${group.cabinet}${weight}${tens}`;
  // Whose piece it is stands behind its name, if there is room before the boxes.
  const after = textWidth(name, NAME, true) + 3;
  const isAfter = beside && after + textWidth(from, SMALL) + 3 + boxes * BOX <= width;
  const small = wrapped(
    [isAfter ? '' : `${from}.`, group.history, group.beside, group.packer].filter((one) => one !== '').join(' '),
    width,
    SMALL,
  );
  const boxRows = beside ? 0 : Math.ceil(boxes / perRow);
  const under = names.length * NAME_STEP + boxRows * BOX;
  return {
    height: under + small.length * STEP + 1.2,
    draw(pen: Pen, x: number, y: number): void {
      for (const [i, line] of names.entries()) pen.text(x, y + (i + 1) * NAME_STEP - 0.6, line, NAME, { bold: true });
      if (isAfter) pen.text(x + after, y + NAME_STEP - 0.6, from, SMALL);
      const [left, top] = beside ? [x + width - boxes * BOX + 1.2, y + 0.4] : [x, y + names.length * NAME_STEP + 0.6];
      for (let i = 0; i < boxes; i++)
        pen.box(left + (i % perRow) * BOX, top + Math.floor(i / perRow) * BOX, 4.2, 4.2, 0.4);
      for (const [i, line] of small.entries()) pen.text(x, y + under + (i + 1) * STEP - 0.4, line, SMALL);
    },
  };
}

const SCALE = 2.6;
const NAME = 4.4;
const NAME_STEP = 4.8;
const SMALL = 3.1;
const STEP = 3.5;
