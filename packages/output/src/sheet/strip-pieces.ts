import { type Hand, INCH, type LengthFormat, Rational, type Strip, type StripLine } from '@dryfit/engine';

/** What is cut out and laid along the bed: both hands in two rows, or, where no bed ties them together, one hand. */
export interface Body {
  readonly hands: readonly Hand[];
  /** mm. */
  readonly length: Rational;
  /** Those that can be drawn, each with its place from the left end. */
  readonly lines: readonly StripLine[];
  /** The end that its ticks are counted from. */
  readonly ticksFrom: Hand;
}

/** A stretch of a strip that goes on one sheet; places from the left end of the strip, mm. */
export interface Piece {
  /** From 1. */
  readonly number: number;
  readonly from: Rational;
  /** Where the next one is laid over it: the end of the strip in the last one. */
  readonly seam: Rational;
  /** Where it ends: beyond its seam lies what the next one is glued on. */
  readonly to: Rational;
}

/** What one piece lies over the one before, mm. */
const OVERLAP = Rational.of(15);
/** A seam keeps so far from every line, where it can, so that no line and no words are cut through, mm. */
const CLEAR = 8;

/** How far apart the ticks are: a centimetre, or half an inch. Seams lie on such places, so that every piece begins at one. */
export const tickOf = ({ units }: LengthFormat): Rational =>
  units === 'in' ? INCH.div(Rational.TWO) : Rational.of(10);

export function bodiesOf({ bed, length, hands, lines }: Strip): readonly Body[] {
  const drawn = lines.filter(({ not }) => not !== 'beyond the bed');
  if (bed) {
    const [only] = hands;
    return [{ hands, length, lines: drawn, ticksFrom: hands.length === 1 && only ? only : 'left' }];
  }
  return hands.map((hand) => ({
    hands: [hand],
    length,
    lines: drawn.filter((line) => line.hand === hand),
    ticksFrom: hand,
  }));
}

/**
 * Pieces no longer than `usable`, mm. Each begins at an exact place of the strip, whatever the one before came to, so that no
 * error of cutting or printing is carried on.
 */
export function piecesOf({ length, lines }: Body, usable: Rational, tick: Rational): readonly Piece[] {
  const pieces: Piece[] = [];
  let from = Rational.ZERO;
  for (let number = 1; length.sub(from).gt(usable); number++) {
    const seam = seamAfter(from, from.add(usable).sub(OVERLAP), lines, tick);
    pieces.push({ number, from, seam, to: Rational.min(seam.add(OVERLAP), length) });
    from = seam;
  }
  return [...pieces, { number: pieces.length + 1, from, seam: length, to: length }];
}

/** The furthest place for a seam that keeps clear of all lines; of those in the last half, the clearest where none does. */
function seamAfter(from: Rational, most: Rational, lines: readonly StripLine[], tick: Rational): Rational {
  const last = most.div(tick).floor();
  const least = from.add(most).div(Rational.TWO);
  let best = last;
  let clearest = -1;
  for (let n = last; n.mul(tick).gt(least); n = n.sub(Rational.of(1))) {
    const at = n.mul(tick).toNumber();
    const clear = Math.min(...lines.map((line) => Math.abs(line.at.toNumber() - at)), CLEAR);
    if (clear > clearest) [best, clearest] = [n, clear];
    if (clear >= CLEAR) break;
  }
  return best.mul(tick);
}
