import { type Operation, type Orientation, opposite } from '@dryfit/engine';
import type { Card } from './cards.js';
import { edgeMark, faceMark, type Seen } from './marks.js';
import { textWidth } from './metrics.js';
import type { Pen } from './page.js';

/** Width of the hatching along a datum edge. */
export const HATCH = 3;

/** A piece across its drawing, mm on the page. */
interface Across {
  readonly left: number;
  readonly width: number;
}

/** A line by the hatching: the mark of the face side or of the face edge with its words, or the datum alone. */
export interface Row {
  readonly kind: 'face side' | 'face edge' | 'datum';
  readonly words: string;
  readonly bold: boolean;
  readonly behind: boolean;
  readonly wide: number;
}

/** Height of such a line, mm. */
export const ROW = 4;
const MARK = { loop: 4, tail: 5.5, vee: 3 } as const;
const TYPE = 3;
/** From the hatching to the words of the loop, of the vee, of the datum alone. */
const OFF = { 'face side': MARK.tail + 3, 'face edge': MARK.vee + 0.8, datum: 1.4 } as const;

const row = (kind: Row['kind'], words: string, bold: boolean, behind = false): Row => ({
  ...{ kind, words, bold, behind },
  wide: HATCH + OFF[kind] + textWidth(words, TYPE, bold),
});

/** What stands by the hatching: the datum, and with it the marks that are chalked at that edge. */
export function datumRows(card: Card, seen: Seen): readonly Row[] {
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

export function drawRows(
  pen: Pen,
  rows: readonly Row[],
  { left, width }: Across,
  hand: 'left' | 'right',
  top: number,
): void {
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

export const farWide = (card: Card, seen: Seen): number => {
  const words = farWord(card, seen);
  return words === '' ? 0 : OFF['face edge'] + textWidth(words, TYPE) + 1;
};

export function farMark(pen: Pen, card: Card, seen: Seen, { left, width }: Across, y: number): void {
  const words = farWord(card, seen);
  if (words === '') return;
  const isLeft = card.hand === 'left';
  const [from, away] = isLeft ? [left + width, -1] : [left, 1];
  edgeMark(pen, [from, y], isLeft ? 'right' : 'left', MARK.vee);
  pen.onGround(from + away * OFF['face edge'], y + TYPE * 0.35, words, TYPE, { align: isLeft ? 'end' : 'start' });
}
