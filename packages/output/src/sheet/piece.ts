import { axisOf, type LengthFormat, Rational, type SetUp, thirdAxis } from '@dryfit/engine';
import { type Card, figure } from './cards.js';
import { fitted, textWidth } from './metrics.js';
import type { Frame, Pen } from './page.js';
import { type Drawn, HATCH, pieceWords } from './piece-words.js';

/** Width of a fence in a drawing. */
const FENCE = 6;
const SMALL = 2.9;
/** Largest share of the drawing between fence and piece. */
const NEAR_FENCE = 0.2;

/**
 * A piece as the operator sees it in the jig: slots in a face from the front, with the reference end up or down; slots in an
 * edge or an end from above, with that edge at the bottom of the drawing, toward the operator. The fence stands at its true
 * hand, the spacer between fence and piece; lines are told from the fence. Proportions are true along the fence, and the
 * other way where there is room.
 */
export function drawPiece(pen: Pen, frame: Frame, card: Card, setUp: SetUp, format: LengthFormat): void {
  const { part, half } = card.operation;
  const along = card.operation.along?.toNumber() ?? 1;
  const acrossAxis = half.role === 'face' ? axisOf(half.from.side) : across(card);
  const other = acrossAxis ? (part.extent[acrossAxis]?.toNumber() ?? along) : along;
  const setting = setUp.setting;
  const gap = half.setback.toNumber();
  const isLeft = card.hand === 'left';

  // Room beside the piece for the fence, above it for the figures of the lines.
  const head = 8;
  const foot = half.role === 'face' ? 4 : 9;
  const room = { width: frame.width - FENCE - 2, height: frame.height - head - foot };
  // A piece far from its fence is drawn nearer, so that it stays large enough to be read.
  const scale = Math.min((room.width * (gap > 0 ? 1 - NEAR_FENCE : 1)) / along, 1);
  const between = Math.min(gap * scale, room.width * NEAR_FENCE);
  const width = along * scale;
  const height = Math.max(half.role === 'face' ? 24 : 14, Math.min(room.height, other * scale));
  const fenceX = isLeft ? frame.x : frame.x + frame.width - FENCE;
  const inner = isLeft ? fenceX + FENCE : fenceX;
  const away = isLeft ? 1 : -1;
  const datumX = inner + away * between;
  const top = frame.y + head;
  const bottom = top + height;
  const left = isLeft ? datumX : datumX - width;
  const slots = half.slots.map(({ fromZero, fromDatum }) => ({
    line: fromZero,
    x: datumX + away * fromDatum.toNumber() * scale,
  }));

  // Nothing stands square to a cant that a fence could hold, and not every shop has a jig.
  if (card.hasFence) fence(pen, fenceX, top - 2, height + 4, card.hand);
  if (setting.spacer.kind === 'stock' || setting.spacer.kind === 'cut') {
    pen.box(Math.min(inner, datumX), top, between, height, 0.3, 0.12);
    pen.text(isLeft ? fenceX : fenceX + FENCE, bottom + 6.4, `spacer ${spacerFigure(setUp, format)}`, SMALL, {
      align: isLeft ? 'start' : 'end',
      bold: true,
    });
  }
  pen.box(left, top, width, height, 0.7);
  pen.hatch(isLeft ? left : left + width - HATCH, top, HATCH, height);

  const isFace = half.role === 'face';
  const y = isFace ? faceLine(setUp, top, height, other) : bottom;
  const length = (half.slots[0]?.length.value ?? 10) * scale;
  for (const { x } of slots) pen.line([x, frame.y + 5], [x, y], 0.25, 1);
  const stopAt =
    isFace && setting.stop
      ? stopLine(pen, card, { left, top, width, height, other, isLeft }, setting.stop, format)
      : undefined;
  for (const { x } of slots) {
    // A slot that breaks out of the piece, which is found elsewhere, is not drawn beyond the drawing.
    const from = Math.max(frame.x, x - length / 2);
    const to = Math.min(frame.x + frame.width, x + length / 2);
    if (isFace) pen.box(from, y - 0.9, to - from, 1.8, 0, 1);
    else pen.box(from, bottom - 2.4, to - from, 2.4, 0, 1);
  }
  lineFigures(pen, slots, frame.y + 4.2, format);
  pieceWords(pen, card, setUp, { left, top, width, height }, y, stopAt);
}

function spacerFigure({ setting: { spacer } }: SetUp, format: LengthFormat): string {
  if (spacer.kind === 'stock') return figure(Rational.sum(spacer.stack), format);
  return spacer.kind === 'cut' ? figure(spacer.width, format) : '';
}

/** In an edge or an end, what is seen from above runs from it inward. */
function across({ operation }: Card) {
  const { half } = operation;
  const run = axisOf(half.datum);
  return axisOf(half.surface) === run ? thirdAxis(run, axisOf(half.from.side)) : axisOf(half.surface);
}

function fence(pen: Pen, x: number, y: number, height: number, hand: 'left' | 'right'): void {
  pen.box(x, y, FENCE, height, 0.5, 0.25);
  pen.text(x + FENCE / 2 + 1.2, y + height / 2 + 11, `${hand.toUpperCase()} FENCE`, 3.2, { upright: true, bold: true });
}

/** How far down the drawing the slots of a face lie: their distance from the reference end, to scale of its height. */
function faceLine({ setting }: SetUp, top: number, height: number, other: number): number {
  const inward = (setting.stop?.toNumber() ?? 0) + setting.base.toNumber();
  const share = Math.min(1, Math.max(0, inward / other));
  return setting.pose.reference === 'up' ? top + share * height : top + (1 - share) * height;
}

/** Figures of the lines over the piece; those that would run into each other stand on two levels. */
function lineFigures(
  pen: Pen,
  slots: readonly { readonly line: Rational; readonly x: number }[],
  y: number,
  format: LengthFormat,
): void {
  const figures = slots.map(({ line, x }) => ({ x, text: figure(line, format) })).sort((a, b) => a.x - b.x);
  const widest = Math.max(...figures.map(({ text }) => textWidth(text, 3, true)));
  const apart = Math.min(...figures.slice(1).map(({ x }, i) => x - (figures[i]?.x ?? 0)));
  // Figures nearer to each other than they are wide stand on two levels, or smaller.
  const levels = apart < widest + 1 ? 2 : 1;
  const size = Math.min(3, (3 * apart * levels) / (widest + 1));
  figures.forEach(({ x, text }, i) => {
    pen.text(x, y - (i % levels) * 3.2, text, size, { align: 'middle', bold: true });
  });
}

/** How far from its stop the machine's base stands, as a line over the piece. Returns how far down its words are. */
function stopLine(
  pen: Pen,
  card: Card,
  { left, top, width, height, other, isLeft }: Drawn & { readonly other: number; readonly isLeft: boolean },
  stop: Rational,
  format: LengthFormat,
): number {
  const share = Math.min(1, stop.toNumber() / other);
  const isUp = card.lies[0].endsWith('up');
  const y = isUp ? top + share * height : top + (1 - share) * height;
  pen.line([left - 3, y], [left + width + 3, y], 0.4, 2);
  const x = isLeft ? left + width - 1.5 : left + 1.5;
  const at = isUp ? y - 1.6 : y + 4;
  const words = `base ${figure(stop, format)} from stop`;
  pen.onGround(x, at, words, fitted(words, width * 0.4, 3, true), {
    align: isLeft ? 'end' : 'start',
    bold: true,
  });
  return at;
}
