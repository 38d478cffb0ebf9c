import {
  formatLength,
  type Hand,
  type LengthFormat,
  type NearMarks,
  Rational,
  type Strip,
  type StripLine,
} from '@dryfit/engine';
import { printLost } from '../print/length.js';
import { figure } from './cards.js';
import { fitted, textWidth } from './metrics.js';
import type { Pen, Spot } from './page.js';
import { type Body, type Piece, tickOf } from './strip-pieces.js';

/** Heights within a piece of a strip, mm: its ticks, a row of lines, and the band along it that tells its hand. */
const TICKS = 8;
const ROW = 26;
const BAND = 4.4;
const WORDS = 3.6;
const SMALL = 2.8;
/** Room that words along a line take in two lines, mm. */
const BOTH = 7.5;
/** Width of a line that is read to a tenth of a millimetre, mm. */
const FINE = 0.25;
/** Words along a line keep so far from it, mm. */
const BESIDE = 1.1;

export const bodyHeight = ({ hands }: Pick<Body, 'hands'>): number => TICKS + hands.length * ROW;

/**
 * One piece of a strip in its true size, its left end at `at`: ticks from the strip's end, a row for each hand with its lines,
 * and words along both ends that tell what lies there.
 */
export function drawPiece(
  pen: Pen,
  [x, y]: Spot,
  strip: Strip,
  body: Body,
  piece: Piece,
  of: number,
  format: LengthFormat,
): void {
  const place = (along: Rational): number => x + along.sub(piece.from).toNumber();
  const [end, height] = [place(piece.to), bodyHeight(body)];
  ticks(pen, y, body, piece, place, format);
  body.hands.forEach((hand, i) => {
    row(pen, y + TICKS + i * ROW, hand, strip, body, [piece, of], place, format);
  });
  pen.line([x, y], [end, y], 0.2);
  pen.line([x, y + height], [end, y + height], 0.2);
  ends(pen, y, strip, body, piece, of, place);
}

/** Ticks, with figures at whole hundreds of millimetres or whole inches; they are counted from one end of the strip. */
function ticks(
  pen: Pen,
  y: number,
  { length, ticksFrom }: Body,
  { from, to }: Piece,
  place: (along: Rational) => number,
  format: LengthFormat,
): void {
  const tick = tickOf(format);
  const [each, half] = format.units === 'in' ? [2, 1] : [10, 5];
  const isLeft = ticksFrom === 'left';
  const [near, far] = isLeft ? [from, to] : [length.sub(to), length.sub(from)];
  const last = Number(far.div(tick).floor().numerator);
  for (let n = Number(near.div(tick).ceil().numerator); n <= last; n++) {
    const counted = tick.mul(Rational.of(n));
    const at = place(isLeft ? counted : length.sub(counted));
    const isWhole = n % each === 0;
    pen.line([at, y], [at, y + (isWhole ? 6 : n % half === 0 ? 4 : 2.5)], isWhole ? 0.3 : 0.2);
    const figure = formatLength(counted, { ...format, unit: true }).text;
    const room = far.sub(counted).toNumber();
    if (isWhole && n > 0 && room > textWidth(figure, 2.8) + 1)
      pen.text(isLeft ? at + 0.8 : at - 0.8, y + 6.6, figure, 2.8, { align: isLeft ? 'start' : 'end' });
  }
}

function row(
  pen: Pen,
  y: number,
  hand: Hand,
  strip: Strip,
  { lines }: Body,
  [piece, of]: readonly [Piece, number],
  place: (along: Rational) => number,
  format: LengthFormat,
): void {
  const [start, seam, end] = [place(piece.from), place(piece.seam), place(piece.to)];
  const name = of > 1 ? `, piece ${piece.number} of ${of}` : '';
  const band = `${hand.toUpperCase()} FENCE, pattern ${strip.pattern}${name}`;
  pen.line([start, y], [end, y], 0.5);
  if (hand === 'right') pen.hatch(start, y + ROW - BAND, end - start, BAND);
  const size = fitted(band, seam - start - 6, WORDS, true);
  pen.onGround(start + 3, y + ROW - 1.1, band, size, { bold: true });
  const own = lines.filter((line) => line.hand === hand && line.at.ge(piece.from) && line.at.le(piece.to));
  const at = own.map((line) => place(line.at));
  own.forEach((line, i) => {
    const here = at[i] ?? 0;
    pen.line([here, y], [here, y + ROW - BAND], FINE, hand === 'right' ? 1.2 : undefined);
    // Beyond the seam the next piece covers it, which has the words.
    if (line.at.gt(piece.seam)) return;
    // Between two lines each has half, so that their words stand clear of each other.
    const gap = (others: readonly number[], end: number) =>
      Math.min(end, ...others.map((other) => Math.abs(other - here) / 2));
    const room = {
      left: gap(
        at.filter((other) => other < here),
        here - start,
      ),
      right: gap(
        at.filter((other) => other > here),
        seam - here,
      ),
    };
    const close = strip.near.find((near) => near[hand].equals(line.fromFence));
    lineWords(pen, here, y + ROW - BAND - 1.2, room, line, strip, close, format);
  });
}

/**
 * Which hand, how far from its fence, and under it which pattern and what its figure has lost by rounding; on the other side
 * of a line that is easily taken for another, for which.
 */
function lineWords(
  pen: Pen,
  x: number,
  foot: number,
  room: { readonly left: number; readonly right: number },
  line: StripLine,
  { pattern }: Strip,
  close: NearMarks | undefined,
  format: LengthFormat,
): void {
  const other: Hand = line.hand === 'left' ? 'right' : 'left';
  const words = `${line.hand} ${figure(line.fromFence, format)}`;
  const { lost } = formatLength(line.fromFence, format);
  const side = room.right >= BOTH || room.right >= room.left ? 'right' : 'left';
  const second = side === 'right' ? 'left' : 'right';
  const warning = close ? `NOT ${other} ${figure(close[other], format)}` : '';
  const isApart = room[second] >= BOTH / 2;
  const more = [isApart ? '' : warning, pattern, lost.isZero() ? '' : printLost(lost), line.not?.toUpperCase() ?? ''];
  const under = more.filter((one) => one !== '').join(', ');
  const used = upright(pen, x, foot, side, words, WORDS, room[side], 0);
  if (room[side] >= BOTH) upright(pen, x, foot, side, under, SMALL, room[side], used + 0.6);
  if (isApart && warning !== '') upright(pen, x, foot, second, warning, WORDS, room[second], 0);
}

/**
 * Words that read upward beside a line, no higher than the row and no wider than there is room; returns what they take.
 * @param after what stands between them and the line already, mm
 */
function upright(
  pen: Pen,
  x: number,
  foot: number,
  side: 'left' | 'right',
  words: string,
  largest: number,
  room: number,
  after: number,
): number {
  const size = Math.min(fitted(words, ROW - BAND - 2, largest, true), Math.max(1.2, room - BESIDE - after - 0.3));
  const base = side === 'right' ? x + BESIDE + after + size * 0.75 : x - BESIDE - after;
  pen.text(base, foot, words, size, { upright: true, bold: true });
  return size * 0.75;
}

/** What lies at the two ends of a piece: a fence, the end of a strip, the piece before, what the next one is glued on. */
function ends(
  pen: Pen,
  y: number,
  { bed }: Strip,
  body: Body,
  { number, from, seam, to }: Piece,
  of: number,
  place: (along: Rational) => number,
): void {
  const height = bodyHeight(body);
  const [left, right] = [place(from), place(to)];
  const along = (x: number, words: string) => {
    pen.text(x, y + height - 1, words, fitted(words, height - 2, 2.7, true), { upright: true, bold: true });
  };
  const isFence = (hand: Hand) => bed !== undefined || body.hands.includes(hand);
  const first = isFence('left') ? 'LEFT FENCE' : 'end of the strip';
  pen.line([left, y - 1.5], [left, y + height + 1.5], FINE);
  along(left - 1.2, number === 1 ? `cut here: ${first}` : `cut here, lay on piece ${number - 1}`);
  pen.line([right, y - 1.5], [right, y + height + 1.5], FINE);
  if (number === of) {
    along(right + 3.2, `cut here: ${isFence('right') ? 'RIGHT FENCE' : 'end of the strip'}`);
    return;
  }
  const joint = place(seam);
  pen.line([joint, y - 1.5], [joint, y + height + 1.5], FINE);
  pen.line([joint, y + height], [right, y], 0.2, 2);
  pen.line([joint, y], [right, y + height], 0.2, 2);
  const words = `glue piece ${number + 1} on here`;
  const size = fitted(words, height - 6, 2.8, true);
  pen.onGround((joint + right) / 2 + 1, y + height - 3, words, size, { upright: true, bold: true });
}
