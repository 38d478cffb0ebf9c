import { layOut } from '../joints/layout.js';
import { Rational } from '../number/rational.js';
import type { Jig, Limits, Pattern } from '../spec/stock.js';

export type Hand = 'left' | 'right';

/** A mark on a line strip: where a line of the pattern lies for a piece at one of the fences. */
export interface StripLine {
  readonly hand: Hand;
  /** From the fence of that hand, mm. */
  readonly fromFence: Rational;
  /** From the left end of the strip, mm. */
  readonly at: Rational;
  /** Why no slot is milled there from this fence; absent where one can be. */
  readonly not?: 'beyond the bed' | 'out of reach' | undefined;
}

/** Two marks of different hands that lie so near to each other that one may be taken for the other. */
export interface NearMarks {
  /** From the left fence. */
  readonly left: Rational;
  /** From the right fence. */
  readonly right: Rational;
  /** How far apart they lie on the bed, mm; above zero. */
  readonly apart: Rational;
}

/** A pattern as it is laid along the bed of a jig. Without a bed there is one for each hand, and no telling how far apart. */
export interface Strip {
  readonly pattern: string;
  /** From fence to fence, mm; absent where the shop tells no bed, and the hands then share no zero. */
  readonly bed: Rational | undefined;
  /** Of the strip, mm: the bed, or what the lines take and a little more. */
  readonly length: Rational;
  /** The length of the part that the lines are laid out for, mm; absent where the pattern's lines are fixed. */
  readonly part: Rational | undefined;
  /** Hands that the jig has a fence for; both without a jig, for marking out. */
  readonly hands: readonly Hand[];
  /** Each hand from its fence on. */
  readonly lines: readonly StripLine[];
  readonly near: readonly NearMarks[];
}

/**
 * Marks of both hands that are nearer to each other than this are taken for one another, mm: the index of a machine is
 * about a millimetre wide, and a pencil's line beside a printed one as much again. Common practice, no source.
 */
export const READ_APART = Rational.of(3);

/** What a strip is longer than its last line where nothing tells how long it is, mm. */
const BEYOND = Rational.of(30);

/**
 * The strip of a pattern; undefined where its lines depend on the length of a part and none is given.
 * @param part the length of the contact that connectors are spread over, its datum edge at zero, mm
 */
export function stripOf(
  pattern: Pattern,
  { jig, limits }: { readonly jig?: Jig | undefined; readonly limits: Limits },
  part?: Rational,
): Strip | undefined {
  const { layout } = pattern;
  if (layout.kind === 'spread' && part === undefined) return undefined;
  const stretch = { from: Rational.ZERO, to: part ?? Rational.ZERO };
  const lines =
    layout.kind === 'lines' ? inOrder(layout.lines) : layOut(layout, stretch, []).map(({ fromZero }) => fromZero);
  const hands: readonly Hand[] =
    jig && jig.fences.length > 0 ? HANDS.filter((hand) => jig.fences.includes(hand)) : HANDS;
  const bed = jig?.bed;
  const length = bed ?? Rational.max(Rational.ZERO, ...lines, part ?? Rational.ZERO).add(BEYOND);
  const reach = jig?.reach;
  const marks = hands.flatMap((hand) =>
    lines.map((fromFence): StripLine => {
      const at = hand === 'left' ? fromFence : length.sub(fromFence);
      const not = bed && fromFence.gt(bed) ? 'beyond the bed' : reach?.lt(fromFence) ? 'out of reach' : undefined;
      return { hand, fromFence, at, not };
    }),
  );
  const usable = (hand: Hand) => marks.filter((mark) => mark.hand === hand && !mark.not).map((mark) => mark.fromFence);
  const near = bed ? nearMarks(usable('left'), usable('right'), bed, limits.step) : [];
  return {
    pattern: pattern.name,
    bed,
    length,
    part: layout.kind === 'spread' ? part : undefined,
    hands,
    lines: marks,
    near,
  };
}

const HANDS: readonly Hand[] = ['left', 'right'];

const inOrder = (lines: readonly Rational[]): readonly Rational[] => [...lines].sort((a, b) => a.compare(b));

/**
 * Marks from the left and from the right fence of a bed that nearly coincide. Marks that coincide are one mark that serves
 * both hands, and as much as is let pass between two surfaces is let pass here: neither misleads.
 * @param passes what is let pass, mm
 */
export function nearMarks(
  left: readonly Rational[],
  right: readonly Rational[],
  bed: Rational,
  passes: Rational,
): readonly NearMarks[] {
  const far = READ_APART.toNumber() + ROUNDING;
  const sum = bed.toNumber();
  const rough = right.map((other) => other.toNumber());
  return left.flatMap((one) => {
    // Doubles tell what is surely clear; the few that are left are reckoned exactly.
    const wanted = sum - one.toNumber();
    return right.flatMap((other, i) => {
      if (Math.abs((rough[i] ?? 0) - wanted) > far) return [];
      const apart = one.add(other).sub(bed).abs();
      return apart.gt(passes) && apart.lt(READ_APART) ? [{ left: one, right: other, apart }] : [];
    });
  });
}

/** More than doubles are off by in sums of a bed's length, mm. */
const ROUNDING = 1e-6;
