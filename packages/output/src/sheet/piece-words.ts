import type { SetUp } from '@dryfit/engine';
import { drawCaption, placeOf, type Words } from './caption.js';
import type { Card } from './cards.js';
import { datumRows, drawRows, farMark, farWide, HATCH, ROW } from './datum-marks.js';
import { seenOnCard } from './marks.js';
import { textWidth } from './metrics.js';
import type { Frame, Pen } from './page.js';
import type { Stretch } from './shorten.js';

/** A piece as it is drawn, mm on the page. */
export interface Drawn {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Which stretches of its height are not taken by a break. */
  readonly kept: readonly Stretch[];
  /** How far down its slots are: their middle in a face, their lower end in an edge. */
  readonly slotsAt: number;
  /** How far down the line of the machine's base is, and what is said of it. */
  readonly stop: { readonly at: number; readonly figure: string; readonly from: 'stop' | 'block' } | undefined;
  /** What is free under it, from left to right. */
  readonly foot: Stretch;
  /** What is free beside it. */
  readonly beside: Frame;
}

const BOLD = 3.4;
const PLAIN = 3;
/** Type of figures that are set by. */
export const FIGURE = 3.3;

/**
 * What is written into a drawn piece: what looks up and down, what is toward the operator, the datum by its hatching, and
 * the marks of face side and face edge.
 */
export function pieceWords(pen: Pen, card: Card, setUp: SetUp, drawn: Drawn): void {
  const isFace = card.operation.half.role === 'face';
  const taken = isFace ? endWords(pen, card, setUp, drawn) : edgeWords(pen, card, drawn);
  const [from, to] = largestFree(drawn.kept, taken);
  const seen = seenOnCard(card.operation, setUp.setting, card.hand);
  const rows = datumRows(card, seen);
  const tall = rows.length * ROW;
  const captions = captionsOf(card, isFace);
  const isLeft = card.hand === 'left';
  const wide = Math.max(...rows.map(({ wide: one }) => one)) + 2;
  const far = farWide(card, seen);
  // A piece that is as narrow as that at its full size has the mark at its datum alone.
  const hasFar = wide + far <= drawn.width;
  const free = drawn.width - wide - (hasFar ? far : 0) - 1;
  const inside: Frame = {
    x: isLeft ? drawn.left + wide : drawn.left + drawn.width - wide - free,
    y: from,
    width: free,
    height: to - from,
  };
  const under: Frame = {
    ...inside,
    x: drawn.left + 4,
    width: drawn.width - 8,
    y: from + tall,
    height: to - from - tall,
  };
  const { place, caption } = placeOf(captions, [inside, under], drawn.beside);
  const isUnder = place === under;
  const middle = isUnder ? from + tall / 2 : (from + to) / 2;
  if (place) drawCaption(pen, caption, place === drawn.beside ? place : { ...place, y: isUnder ? from + tall : from });
  drawRows(pen, rows, drawn, card.hand, middle - tall / 2);
  if (hasFar) farMark(pen, card, seen, drawn, middle);
}

/** What is said in the middle of a piece: on as few lines as can be, and on more. */
function captionsOf(card: Card, isFace: boolean): readonly (readonly Words[])[] {
  const bold = (text: string): Words => ({ text, size: BOLD, bold: true });
  if (isFace) return [[bold(`${card.toward} toward you`)], [bold(card.toward), bold('toward you')]];
  return [[bold(looking(card, 'up')), { text: '(you look down on it)', size: PLAIN }]];
}

/**
 * In a face, what looks up and down, each at its end; a stop at the end it is set from, and how far from it the machine's
 * base stands. Returns what is taken.
 */
function endWords(pen: Pen, card: Card, { setting }: SetUp, drawn: Drawn): Stretch[] {
  const { left, top, width, height, slotsAt: y, stop } = drawn;
  const bottom = top + height;
  const room = width - 2 * HATCH - 2;
  const up = setting.pose.reference === 'up';
  const rests = card.operation.half.stop?.block ? ', at the block' : ', at the stop';
  const atStop = (isReference: boolean) => (setting.stop && isReference ? rests : '');
  // Where slots run close to an end, its words stand on their other side.
  const upAt = y - top < NEAR_END ? y + 5 : top + 3.4;
  const downAt = bottom - y < NEAR_END ? y - 2.4 : bottom - 1.4;
  const taken: Stretch[] = [[y - 1.4, y + 1.4], lineOf(upAt), lineOf(downAt)];
  const write = (at: number, text: string, size: number, bold: boolean) =>
    pen.onGround(left + width / 2, at, text, sizeIn(text, room, size, bold), { align: 'middle', bold });
  write(upAt, `${looking(card, 'up')}${atStop(up)}`, BOLD, true);
  write(downAt, `${looking(card, 'down')}${atStop(!up)}`, setting.stop && !up ? BOLD : PLAIN, !up && !!setting.stop);
  if (!stop) return taken;
  // Between the line and its stop, unless there is no room: then beyond the words of the end.
  const [nearTop, nearBottom] = [y - top < NEAR_END, bottom - y < NEAR_END];
  const beyond = up ? upAt + NEXT : downAt - NEXT;
  const before = up
    ? Math.min(stop.at - 1.4, nearBottom ? downAt - NEXT : bottom)
    : Math.max(stop.at + 4, nearTop ? upAt + NEXT : top);
  const at = (up ? nearTop : nearBottom) ? beyond : before;
  const isLeft = card.hand === 'left';
  const long = `base ${stop.figure} from ${stop.from}`;
  const words = textWidth(long, FIGURE, true) <= width - HATCH - 3 ? long : `base ${stop.figure}`;
  pen.onGround(isLeft ? left + width - 1.5 : left + 1.5, at, words, FIGURE, {
    align: isLeft ? 'end' : 'start',
    bold: true,
  });
  return [...taken, lineOf(at)];
}

/** Slots nearer to an end than this leave no room for words between. */
const NEAR_END = 9;
/** From one line of words to the next. */
const NEXT = 4.2;

const lineOf = (y: number): Stretch => [y - 3.4, y + 1];

/** Of an edge that is seen from above, under the drawing what is toward the operator. Returns what the slots take. */
function edgeWords(pen: Pen, card: Card, { left, width, top, height, slotsAt, foot: [from, to] }: Drawn): Stretch[] {
  const toward = `${card.toward} toward you`;
  const size = sizeIn(toward, to - from, 3.6, true);
  const half = textWidth(toward, size, true) / 2;
  const middle = Math.min(Math.max(left + width / 2, from + half), to - half);
  pen.text(middle, top + height + 3.8, toward, size, { align: 'middle', bold: true });
  return [[slotsAt - 2.8, slotsAt]];
}

const looking = ({ lies }: Card, way: 'up' | 'down'): string => lies.find((one) => one.endsWith(` ${way}`)) ?? '';

/** No type is smaller than this, mm: 7 points. */
const SMALLEST = 2.5;

/** The largest height of type at which a text fits a width, as long as it can be read. */
const sizeIn = (text: string, width: number, size: number, bold: boolean): number =>
  Math.max(SMALLEST, Math.min(size, (size * width) / textWidth(text, size, bold)));

/** The largest stretch on which nothing stands. */
function largestFree(kept: readonly Stretch[], taken: readonly Stretch[]): Stretch {
  const free = taken.reduce<readonly Stretch[]>(
    (left, [from, to]) =>
      left.flatMap(([a, b]): Stretch[] => [
        [a, Math.min(b, from)],
        [Math.max(a, to), b],
      ]),
    kept.map(([a, b]) => [a + 0.6, b - 0.6]),
  );
  return free.reduce((best, one) => (one[1] - one[0] > best[1] - best[0] ? one : best), [0, 0]);
}
