import { type LengthFormat, Rational, type SetUp } from '@dryfit/engine';
import { drawBreak } from './break-line.js';
import { type Card, figure } from './cards.js';
import { HATCH } from './datum-marks.js';
import { lineFigures } from './line-figures.js';
import { fitted, textWidth } from './metrics.js';
import type { Frame, Pen } from './page.js';
import { acrossOf, type Placed, placesAcross, placesDown } from './piece-places.js';
import { FIGURE, pieceWords } from './piece-words.js';
import { FENCE, NEAR } from './scale.js';
import { BREAK } from './shorten.js';

/** Under a piece: what is toward the operator, and the spacer. */
const FOOT = { words: 4.6, none: 1.2 } as const;
/** The least heights at which a piece has room for its words, mm: an edge from above, a face, a face with a stop. */
const LEAST = { edge: 19.4, face: 22.6, stop: 31.4 } as const;

/** A drawing of a piece: the least height it can be read at, the one beyond which it does not grow, and how it is drawn. */
export interface PieceDrawing {
  /** Its scale in words, line by line. */
  readonly scale: readonly string[];
  readonly least: number;
  readonly most: number;
  draw(pen: Pen, frame: Frame): void;
}

/**
 * A piece as the operator sees it in the jig: slots in a face from the front, with the reference end up or down; slots in an
 * edge or an end from above, with that edge at the bottom of the drawing, toward the operator. The fence stands at its true
 * hand, the spacer between fence and piece; lines are told from the fence. All of it is to one scale; what has no room is
 * shortened by a break. A piece too narrow for its words is drawn wider across, and says so. Slots and fence are symbols.
 * @param scale how many times smaller than it is
 */
export function pieceDrawing(
  card: Card,
  setUp: SetUp,
  width: number,
  scale: number,
  format: LengthFormat,
): PieceDrawing {
  const { half } = card.operation;
  const isFace = half.role === 'face';
  const stop = setUp.setting.stop && half.stop?.at;
  const foot = isFace && !hasSpacer(setUp) ? FOOT.none : FOOT.words;
  const least = LEAST[isFace ? (stop ? 'stop' : 'face') : 'edge'];
  const whole = acrossOf(card) / scale;
  const stretch = Math.max(1, least / whole);
  const across = placesAcross(card, frameless(width), scale);
  const figures = lineFigures(
    half.slots.map(({ fromZero }, i) => ({ x: across.slots[i] ?? 0, text: figure(fromZero, format) })),
    [0, width],
  );
  return {
    scale: scaleWords(scale, stretch),
    least: figures.height + least + foot,
    most: figures.height + Math.max(least, whole) + foot,
    draw(pen, frame) {
      const top = frame.y + figures.height;
      const room = frame.height - figures.height - foot;
      const down = placesDown(card, setUp, scale / stretch, room);
      const places = placesAcross(card, frame, scale);
      const drawn = { ...places, top, height: down.height, bottom: top + down.height };
      const slotsAt = top + down.slots;
      for (const x of places.slots) pen.line([x, top], [x, slotsAt], 0.25, 1);
      body(pen, card, setUp, drawn);
      for (const [i, [from, to]] of down.shortened.breaks.entries()) {
        const x = Math.min(places.left, places.spacer.x);
        const wide = places.width + (hasSpacer(setUp) ? places.spacer.width : 0);
        drawBreak(
          pen,
          { x: hasSpacer(setUp) ? x : places.left, y: top + from, width: wide, height: to - from },
          'across',
          i === 0,
        );
      }
      // Nothing stands square to a cant that a fence could hold, and not every shop has a jig.
      if (card.hasFence) fence(pen, places.fence, top - 1, down.height + 2, card.hand);
      slotSymbols(pen, card, places.slots, slotsAt, scale, frame);
      const stopAt = stop && isFace ? top + down.at(stop.toNumber()) : undefined;
      if (stopAt !== undefined) stopLine(pen, drawn, stopAt);
      const offset = frame.x;
      lineFigures(
        half.slots.map(({ fromZero }, i) => ({ x: places.slots[i] ?? 0, text: figure(fromZero, format) })),
        [offset, offset + width],
      ).draw(pen, top);
      const under = footWords(pen, card, setUp, drawn, frame, format);
      pieceWords(pen, card, setUp, {
        ...drawn,
        kept: down.shortened.kept.map(([from, to]) => [top + from, top + to] as const),
        slotsAt,
        stop:
          stop && stopAt !== undefined
            ? { at: stopAt, figure: figure(stop, format), from: half.stop?.block ? 'block' : 'stop' }
            : undefined,
        foot: under,
        beside: besideOf(drawn, frame, card.hand),
      });
    },
  };
}

const frameless = (width: number): Frame => ({ x: 0, y: 0, width, height: 0 });

const hasSpacer = ({ setting: { spacer } }: SetUp): boolean => spacer.kind === 'stock' || spacer.kind === 'cut';

const scaleWords = (scale: number, stretch: number): readonly string[] =>
  stretch > 1.001 ? [`scale 1:${scale}`, 'along the fence'] : [`scale 1:${scale}`];

type Drawn = Placed & { readonly top: number; readonly height: number; readonly bottom: number };

/** The piece with its datum hatched, and the spacer before it. */
function body(
  pen: Pen,
  card: Card,
  setUp: SetUp,
  { left, width, top, height, spacer }: Pick<Drawn, 'left' | 'width' | 'top' | 'height' | 'spacer'>,
): void {
  if (hasSpacer(setUp)) pen.box(spacer.x, top, spacer.width, height, 0.3, 0.12);
  // A piece far from its fence is drawn nearer.
  if (spacer.width >= NEAR)
    drawBreak(pen, { x: spacer.x + (NEAR - BREAK) / 2, y: top, width: BREAK, height }, 'down', true);
  pen.box(left, top, width, height, 0.7);
  pen.hatch(card.hand === 'left' ? left : left + width - HATCH, top, HATCH, height);
}

function fence(pen: Pen, x: number, y: number, height: number, hand: 'left' | 'right'): void {
  pen.box(x, y, FENCE, height, 0.5, 0.25);
  const words = `${hand.toUpperCase()} FENCE`;
  pen.text(x + FENCE / 2 + 1.1, y + height / 2, words, fitted(words, height - 2, 3.2, true), {
    align: 'middle',
    upright: true,
    bold: true,
  });
}

/** Slots as black bars of their length: in a face where they are, in an edge along the edge. */
function slotSymbols(
  pen: Pen,
  { operation: { half } }: Card,
  places: readonly number[],
  y: number,
  scale: number,
  frame: Frame,
): void {
  const length = (half.slots[0]?.length.value ?? 10) / scale;
  for (const x of places) {
    // A slot that breaks out of the piece, which is found elsewhere, is not drawn beyond the drawing.
    const from = Math.max(frame.x, x - length / 2);
    const to = Math.min(frame.x + frame.width, x + length / 2);
    if (half.role === 'face') pen.box(from, y - 0.9, to - from, 1.8, 0, 1);
    else pen.box(from, y - 2.4, to - from, 2.4, 0, 1);
  }
}

/** Where the machine's base stands, as a line over the piece; its figure is written with the other words. */
const stopLine = (pen: Pen, { left, width }: Drawn, y: number): void => pen.line([left, y], [left + width, y], 0.4, 2);

/** The spacer under its place by the fence. Returns what is left beside it. */
function footWords(
  pen: Pen,
  card: Card,
  setUp: SetUp,
  { bottom }: Drawn,
  frame: Frame,
  format: LengthFormat,
): readonly [from: number, to: number] {
  const isLeft = card.hand === 'left';
  const y = bottom + FOOT.words - 0.8;
  const spacer = hasSpacer(setUp) ? `spacer ${spacerFigure(setUp, format)}` : '';
  const right = frame.x + frame.width;
  const before = spacer === '' ? 0 : textWidth(spacer, FIGURE, true) + APART;
  pen.text(isLeft ? frame.x : right, y, spacer, FIGURE, { align: isLeft ? 'start' : 'end', bold: true });
  return isLeft ? [frame.x + before, right] : [frame.x, right - before];
}

/** Between the words of the spacer and others, so that they are not read as one. */
const APART = 6;

function spacerFigure({ setting: { spacer } }: SetUp, format: LengthFormat): string {
  if (spacer.kind === 'stock') return figure(Rational.sum(spacer.stack), format);
  return spacer.kind === 'cut' ? figure(spacer.width, format) : '';
}

/** What is free beside a piece, away from its fence. */
function besideOf({ left, width, top, height }: Drawn, frame: Frame, hand: 'left' | 'right'): Frame {
  const gap = 2;
  const x = hand === 'left' ? left + width + gap : frame.x;
  const end = hand === 'left' ? frame.x + frame.width : left - gap;
  return { x, y: top, width: end - x, height };
}
