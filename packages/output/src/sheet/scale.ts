import { opposite } from '@dryfit/engine';
import type { Card } from './cards.js';

/** Width of a fence in a drawing, mm. */
export const FENCE = 6;
/** Between the piece and the far edge of the drawing. */
const FAR = 2;
/** A piece farther from its fence than this is drawn so far from it, mm in the drawing. */
export const NEAR = 16;
/** A piece drawn narrower than this has no room for its words, mm: with a face edge at its datum, and at both edges. */
const LEAST = { one: 36, both: 54 } as const;

const leastOf = ({ marks, operation }: Card): number =>
  marks.edges.some(({ side }) => side === opposite(operation.half.datum)) ? LEAST.both : LEAST.one;

/**
 * To which scale a card is drawn, as how many times smaller: one scale for all cards of a sheet, the largest at which the
 * longest of them has room; but a piece that would be too narrow to be read is drawn larger.
 * @param width of each drawing, mm
 */
export function scalesOf(cards: readonly Card[], width: number): readonly number[] {
  const room = width - FENCE - FAR;
  const common = Math.max(1, ...cards.map((card) => scaleTo(card, (wide) => wide <= room)));
  return cards.map((card) =>
    lengthOf(card) / common >= leastOf(card)
      ? common
      : Math.min(
          common,
          scaleTo(card, (wide) => wide <= room && wide <= leastOf(card) * MORE),
        ),
  );
}

/** A piece that is drawn larger than others is drawn no wider than this many times what its words need. */
const MORE = 1.35;

/** Along the fence, mm. */
export const lengthOf = ({ operation }: Card): number => operation.along?.toNumber() ?? 1;

/** How far a piece stands from its fence in a drawing, mm. */
export const gapOf = ({ operation: { half } }: Card, scale: number): number =>
  Math.min(half.setback.toNumber() / scale, NEAR);

function scaleTo(card: Card, fits: (wide: number) => boolean): number {
  for (let scale = 1; ; scale += stepAt(scale)) if (fits(lengthOf(card) / scale + gapOf(card, scale))) return scale;
}

/** Whole numbers, and from 20 on such as are read off a rule. */
const stepAt = (scale: number): number => (scale < 20 ? 1 : scale < 50 ? 5 : scale < 200 ? 10 : scale);
