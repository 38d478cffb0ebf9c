import { type Operation, type Orientation, opposite, type SetUp } from '@dryfit/engine';
import type { Card } from './cards.js';
import { edgeMark, faceMark, type Seen, seenOnCard } from './marks.js';
import { textWidth, wrapped } from './metrics.js';
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
  readonly stop: { readonly at: number; readonly figure: string } | undefined;
  /** What is free under it, from left to right. */
  readonly foot: Stretch;
  /** What is free beside it. */
  readonly beside: Frame;
}

/** Width of the hatching along a datum edge. */
export const HATCH = 3;
const BOLD = 3.4;
const PLAIN = 3;
/** Type of figures that are set by. */
export const FIGURE = 3.3;
/** Height of a line, of its type. */
const LINE = 1.16;

/** Words one under the other. */
interface Words {
  readonly text: string;
  readonly size: number;
  readonly bold?: boolean;
}

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

/** Where words stand: in the piece if they can, else beside it; smaller or broken anywhere where nothing else is left. */
function placeOf(
  captions: readonly (readonly Words[])[],
  within: readonly Frame[],
  beside: Frame,
): { readonly place: Frame | undefined; readonly caption: readonly Words[] } {
  for (const frames of [within, [beside]])
    for (const caption of captions) {
      const place = frames.find((one) => fitsIn(caption, one, 1));
      if (place) return { place, caption };
    }
  const caption = captions.at(-1) ?? [];
  return { place: roomiest(caption, [...within, beside]), caption };
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
  const atStop = (isReference: boolean) => (setting.stop && isReference ? ', at the stop' : '');
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
  const long = `base ${stop.figure} from stop`;
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

/** Words in lines that a width takes. */
const linesIn = (words: readonly Words[], width: number, shrink: number): readonly Words[] =>
  words.flatMap(({ text, size, bold = false }) =>
    wrapped(text, width, size * shrink, bold).map((line) => ({ text: line, size: size * shrink, bold })),
  );

const heightOf = (lines: readonly Words[]): number => lines.reduce((sum, { size }) => sum + size * LINE, 0);

/** Whether words stand in a frame with each of them on one line. */
function fitsIn(words: readonly Words[], { width, height }: Frame, shrink: number): boolean {
  return (
    heightOf(words) <= height && words.every(({ text, size, bold }) => textWidth(text, size * shrink, bold) <= width)
  );
}

/** Where words can stand on several lines or smaller; nowhere if there is no such place. */
function roomiest(words: readonly Words[], frames: readonly Frame[]): Frame | undefined {
  return frames.find((frame) => shrinkIn(words, frame) !== undefined);
}

/** How much smaller words are set so that their lines fit a frame; undefined if they cannot be read any more. */
function shrinkIn(words: readonly Words[], { width, height }: Frame): number | undefined {
  return [1, 0.94, 0.88, 0.84].find((shrink) => {
    const lines = linesIn(words, width, shrink);
    return heightOf(lines) <= height && lines.every(({ text, size, bold }) => textWidth(text, size, bold) <= width);
  });
}

function drawCaption(pen: Pen, words: readonly Words[], frame: Frame): void {
  const lines = linesIn(words, frame.width, shrinkIn(words, frame) ?? 1);
  let y = frame.y + (frame.height - heightOf(lines)) / 2;
  for (const { text, size, bold = false } of lines) {
    pen.onGround(frame.x + frame.width / 2, y + size * 0.86, text, size, { align: 'middle', bold });
    y += size * LINE;
  }
}

/** A line by the hatching: the mark of the face side or of the face edge with its words, or the datum alone. */
interface Row {
  readonly kind: 'face side' | 'face edge' | 'datum';
  readonly words: string;
  readonly bold: boolean;
  readonly behind: boolean;
  readonly wide: number;
}

const ROW = 4;
const MARK = { loop: 4, tail: 5.5, vee: 3 } as const;
const TYPE = 3;
/** From the hatching to the words of the loop, of the vee, of the datum alone. */
const OFF = { 'face side': MARK.tail + 3, 'face edge': MARK.vee + 0.8, datum: 1.4 } as const;

const row = (kind: Row['kind'], words: string, bold: boolean, behind = false): Row => ({
  ...{ kind, words, bold, behind },
  wide: HATCH + OFF[kind] + textWidth(words, TYPE, bold),
});

/** What stands by the hatching: the datum, and with it the marks that are chalked at that edge. */
function datumRows(card: Card, seen: Seen): readonly Row[] {
  const { faces } = card.marks;
  if (!isFaceEdge(card.marks, card.operation.half.datum)) return [row('datum', card.datum, true)];
  const sides = faces.map(({ side }) => side);
  const edge = row('face edge', `face edge: ${card.datum}`, true);
  if (sides.length === 0) return [edge];
  const behind = !sides.includes(seen.face);
  const both = !behind && sides.includes(opposite(seen.face));
  const side = both ? 'face side, both' : behind ? 'face side, hidden' : 'face side';
  return [row('face side', side, false, behind), edge];
}

const isFaceEdge = ({ edges }: Orientation, side: Operation['half']['datum'] | undefined): boolean =>
  edges.some((one) => one.side === side);

function drawRows(pen: Pen, rows: readonly Row[], { left, width }: Drawn, hand: 'left' | 'right', top: number): void {
  const isLeft = hand === 'left';
  const [from, away] = isLeft ? [left + HATCH, 1] : [left + width - HATCH, -1];
  rows.forEach(({ kind, words, bold, behind }, i) => {
    const y = top + (i + 0.5) * ROW;
    if (kind === 'face side') faceMark(pen, [from + away * MARK.tail, y], hand, MARK.loop, MARK.tail, behind);
    if (kind === 'face edge') edgeMark(pen, [from, y], hand, MARK.vee);
    pen.onGround(from + away * OFF[kind], y + TYPE * 0.35, words, TYPE, { align: isLeft ? 'start' : 'end', bold });
  });
}

/** The edge away from the fence, where that is a face edge too. */
const farWord = (card: Card, seen: Seen): string => {
  const { operation, marks } = card;
  const far = card.hand === 'left' ? seen.edges.right : seen.edges.left;
  return far !== operation.half.datum && isFaceEdge(marks, far) ? 'face edge' : '';
};

const farWide = (card: Card, seen: Seen): number => {
  const words = farWord(card, seen);
  return words === '' ? 0 : OFF['face edge'] + textWidth(words, TYPE) + 1;
};

function farMark(pen: Pen, card: Card, seen: Seen, { left, width }: Drawn, y: number): void {
  const words = farWord(card, seen);
  if (words === '') return;
  const isLeft = card.hand === 'left';
  const [from, away] = isLeft ? [left + width, -1] : [left, 1];
  edgeMark(pen, [from, y], isLeft ? 'right' : 'left', MARK.vee);
  pen.onGround(from + away * OFF['face edge'], y + TYPE * 0.35, words, TYPE, { align: isLeft ? 'end' : 'start' });
}
