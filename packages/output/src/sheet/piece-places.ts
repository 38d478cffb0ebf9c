import { axisOf, type SetUp, thirdAxis } from '@dryfit/engine';
import type { Card } from './cards.js';
import type { Frame } from './page.js';
import { FENCE, gapOf, lengthOf } from './scale.js';
import { type Shortened, shortened } from './shorten.js';

/** How much is kept of the far end of a piece that is shortened. */
const END = { edge: 2.4, face: 4.8 } as const;

/** How long a piece is the way that lies up and down its drawing, mm. */
export function acrossOf(card: Card): number {
  const { part, half } = card.operation;
  const axis = half.role === 'face' ? axisOf(half.from.side) : inward(card);
  return (axis ? part.extent[axis]?.toNumber() : undefined) ?? lengthOf(card);
}

/** In an edge or an end, what is seen from above runs from it inward. */
function inward({ operation: { half } }: Card) {
  const run = axisOf(half.datum);
  return axisOf(half.surface) === run ? thirdAxis(run, axisOf(half.from.side)) : axisOf(half.surface);
}

/** A piece as it is drawn, mm. */
export interface Placed {
  readonly left: number;
  readonly width: number;
  /** The fence's edge away from the piece, and what lies between fence and piece. */
  readonly fence: number;
  readonly spacer: { readonly x: number; readonly width: number };
  /** Middles of the slots. */
  readonly slots: readonly number[];
}

export function placesAcross(card: Card, frame: Frame, scale: number): Placed {
  const isLeft = card.hand === 'left';
  const fence = isLeft ? frame.x : frame.x + frame.width - FENCE;
  const inner = isLeft ? fence + FENCE : fence;
  const away = isLeft ? 1 : -1;
  const gap = gapOf(card, scale);
  const width = lengthOf(card) / scale;
  const datum = inner + away * gap;
  return {
    left: isLeft ? datum : datum - width,
    width,
    fence,
    spacer: { x: Math.min(inner, datum), width: gap },
    slots: card.operation.half.slots.map(({ fromDatum }) => datum + (away * fromDatum.toNumber()) / scale),
  };
}

export interface Down {
  readonly height: number;
  readonly shortened: Shortened;
  /** Where the slots are, mm from the top. */
  readonly slots: number;
  /** Where something is that is so far from the reference end, mm. */
  at(inward: number): number;
}

/** What lies where from the top of a piece downward, with what is shortened to have room. */
export function placesDown(card: Card, { setting }: SetUp, scale: number, room: number): Down {
  const other = acrossOf(card);
  const whole = other / scale;
  const isFace = card.operation.half.role === 'face';
  const isUp = setting.pose.reference === 'up';
  const fromTop = (inwards: number): number => Math.min(whole, (isUp ? inwards : other - inwards) / scale);
  const { stop } = card.operation.half;
  const centre = (stop?.at.toNumber() ?? 0) + setting.base.toNumber();
  const seen = isFace ? Math.max(0, fromTop(centre)) : whole;
  const short = shortened(whole, room, seen, isFace ? END.face : END.edge);
  return {
    height: short.at(whole),
    shortened: short,
    slots: short.at(seen),
    at: (inwards) => short.at(Math.max(0, fromTop(inwards))),
  };
}
