import type { SetUp } from '@dryfit/engine';
import type { Card } from './cards.js';
import { MARKS_BESIDE, orientationMarks, seenOnCard } from './marks.js';
import { fitted, textWidth } from './metrics.js';
import type { Pen } from './page.js';

/** A piece as it is drawn, mm. */
export interface Drawn {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Width of the hatching along a datum edge. */
export const HATCH = 3;
/** A drawing smaller than this has no room for the marks of face side and face edge, mm. */
const MARKED_FROM = { width: 46, height: 40 };
const DATUM = 3.2;

/** How far down a page something stands that nothing else may stand on. */
type Band = readonly [from: number, to: number];

/**
 * What is written into a drawn piece: what looks up and down, what is toward the operator, the datum along its hatching, and
 * the marks of face side and face edge where there is room.
 * @param y how far down the slots are
 * @param stop how far down the words of a stop are
 */
export function pieceWords(
  pen: Pen,
  card: Card,
  { setting }: SetUp,
  drawn: Drawn,
  y: number,
  stop: number | undefined,
): void {
  const taken = card.operation.half.role === 'face' ? onFace(pen, card, drawn, y) : onEdge(pen, card, drawn);
  const { left, top, width, height } = drawn;
  const isLeft = card.hand === 'left';
  const marked = height >= MARKED_FROM.height && width >= MARKED_FROM.width;
  const middle = top + datumHeight(card.operation.half.role === 'face', y - top, height, marked);
  const half = textWidth(card.datum, DATUM, true) / 2;
  pen.onGround(isLeft ? left + HATCH + 4 : left + width - HATCH - 1.4, middle + half, card.datum, DATUM, {
    upright: true,
    bold: true,
  });
  if (!marked) return;
  const slots: Band = [y - 2.4, y + 1.4];
  const stops: Band[] = stop === undefined ? [] : [[stop - 3, stop + 5]];
  const at = clear(drawn, [...taken, slots, ...stops, [middle - half - 0.6, middle + half + 0.6]]);
  if (at === undefined) return;
  const seen = seenOnCard(card.operation, setting, card.hand);
  // What lies at either hand: the edges toward the operator and away from him are full of other words.
  const edges = card.marks.edges.filter(({ side }) => side === seen.edges.left || side === seen.edges.right);
  // Beside the hatching, not on it.
  const x = isLeft ? left + HATCH : left;
  orientationMarks(
    pen,
    { x, y: top, width: width - HATCH, height },
    { ...card.marks, edges },
    seen,
    (at - top) / height,
  );
}

/** In a face, what looks up and down, and what is toward the operator away from its slots. Returns what that takes. */
function onFace(pen: Pen, card: Card, { left, top, width, height }: Drawn, y: number): readonly Band[] {
  const middle = left + width / 2;
  const room = width - 16;
  const [up, down] = [looking(card, 'up'), looking(card, 'down')];
  const toward = `${card.toward} toward you`;
  // Where slots run close to an end, its words stand on their other side.
  const upAt = y - top < 7 ? y + 5 : top + 4.4;
  const downAt = top + height - y < 7 ? y - 2.4 : top + height - 1.6;
  const above = y - top > height / 2;
  const at = above ? (top + 5 + y) / 2 + 1.2 : (y + top + height - 4) / 2 + 1.2;
  pen.onGround(middle, upAt, up, fitted(up, room, 3.4, true), { align: 'middle', bold: true });
  pen.onGround(middle, downAt, down, fitted(down, room, 3), { align: 'middle' });
  pen.onGround(middle, at, toward, fitted(toward, room, 3.6, true), { align: 'middle', bold: true });
  return [upAt, downAt, at].map(lineOf);
}

/** Of an edge that is seen from above, what looks up, and under the drawing what is toward the operator. */
function onEdge(pen: Pen, card: Card, { left, top, width, height }: Drawn): readonly Band[] {
  const middle = left + width / 2;
  const seen = `${looking(card, 'up')} (you look down on it)`;
  const toward = `${card.toward} toward you`;
  const at = top + height / 2 - 0.5;
  pen.onGround(middle, at, seen, fitted(seen, width - 16, 3.4, true), { align: 'middle', bold: true });
  pen.text(middle, top + height + 4.2, toward, fitted(toward, width * 0.6, 3.6, true), { align: 'middle', bold: true });
  return [lineOf(at)];
}

const looking = ({ lies }: Card, way: 'up' | 'down'): string => lies.find((one) => one.endsWith(` ${way}`)) ?? '';

const lineOf = (y: number): Band => [y - 3.4, y + 1];

/** How far down the words of the datum stand: in a face away from the slots, and clear of the marks, if there is room. */
function datumHeight(isFace: boolean, slots: number, height: number, marked: boolean): number {
  if (!isFace && !marked) return height / 2;
  return !isFace || slots < height / 2 ? height * 0.72 : height * 0.28;
}

/** A height at which marks stand on nothing, as far from everything as can be; undefined if there is none. */
function clear({ top, height }: Drawn, taken: readonly Band[]): number | undefined {
  const half = MARKS_BESIDE / 2;
  let best: { readonly at: number; readonly room: number } | undefined;
  for (let at = top + half + 1; at <= top + height - half - 1; at += 0.5) {
    const room = Math.min(...taken.map(([from, to]) => Math.max(from - (at + half), at - half - to)));
    if (room >= 0 && (!best || room > best.room)) best = { at, room };
  }
  return best?.at;
}
