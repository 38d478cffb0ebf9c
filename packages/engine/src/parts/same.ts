import type { Box, Cut, FittedCant, FittedPart, Point, Turn } from '../fit/fit.js';
import { directionOut, placeOut } from '../geometry/turn.js';
import { normal, type Vector } from '../geometry/vector.js';
import type { Bounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import { AXES, type Axis, axisOf, highSide, isHigh, type Side, thicknessAxis } from '../spec/sides.js';
import { liesAlike } from './lying.js';
import { backwards, couldBe, type Moments, momentsOf } from './moments.js';

/** A piece's length, width and thickness, in that order. */
export interface PieceAxes {
  readonly length: Axis;
  readonly width: Axis;
  readonly thickness: Axis;
}

/** Turning a piece over about its length, width or thickness, or not at all: which of its axes then run backwards. */
const TURNS: readonly (readonly [boolean, boolean, boolean])[] = [
  [false, false, false],
  [false, true, true],
  [true, false, true],
  [true, true, false],
];

/** Length along the grain, width across it; a grain through the thickness counts as none, and the first other axis is taken. */
export function pieceAxes(part: Pick<FittedPart, 'attitude' | 'grain'>): PieceAxes {
  const thickness = thicknessAxis(part.attitude);
  const [first = 'x', second = 'y'] = AXES.filter((axis) => axis !== thickness);
  return part.grain === second
    ? { length: second, width: first, thickness }
    : { length: first, width: second, thickness };
}

/**
 * A piece written down without regard to where it stands: two parts with one signature are the same piece. The
 * piece may be turned over (proper rotations that keep its length along its length), never mirrored; `mirrored`
 * gives the signature of its mirror image instead. Undefined while the part's sizes are.
 */
export function pieceSignature(part: FittedPart, mirrored = false): string | undefined {
  const { box } = part;
  if (!box) return undefined;
  const { length, width, thickness } = pieceAxes(part);
  const own = [length, width, thickness] as const;
  const write = writerOf(part, box, own, mirrored);
  return `${part.material}; ${sizeOf(box, own)}; ${TURNS.map(write).sort()[0]}`;
}

/** Own axes are right-handed in every part, or mirror images would be taken for one piece. */
const momentsOfPiece = (part: FittedPart, box: Box, own: readonly [Axis, Axis, Axis]): Moments =>
  momentsOf(part, box, own, !isEven(own));

/** Whether one of two parts of a size may be the mirror image of the other, told by where their cuts lie on the whole. */
export function mayMirror(one: FittedPart, two: FittedPart): boolean {
  if (!one.box || !two.box) return false;
  const axes = ({ length, width, thickness }: PieceAxes) => [length, width, thickness] as const;
  const image = backwards(momentsOfPiece(one, one.box, axes(pieceAxes(one))));
  const wanted = momentsOfPiece(two, two.box, axes(pieceAxes(two)));
  return TURNS.some((turn) => couldBe(image, turn, wanted));
}

type TurnedOver = (typeof TURNS)[number];
const AS_IT_LIES: TurnedOver = [false, false, false];

/** Writes down what is cut into a piece once it is turned over. */
function writerOf(
  part: FittedPart,
  box: Box,
  own: readonly [Axis, Axis, Axis],
  mirrored: boolean,
): (turn: TurnedOver) => string {
  // Own axes must be right-handed in every part, or mirror images would be taken for one piece.
  const other = isEven(own) === mirrored;
  const features = describe(part, box, own);
  return ([a, b, c]) => {
    const backwards = [a, b, c !== other];
    return features
      .map((feature) => feature.map((word) => (typeof word === 'string' ? word : said(word, backwards))).join(' '))
      .sort()
      .join('; ');
  };
}

/** Whether three axes are an even permutation of x, y, z. */
function isEven([a, b, c]: readonly [Axis, Axis, Axis]): boolean {
  const swapped = (p: Axis, q: Axis): number => (AXES.indexOf(p) > AXES.indexOf(q) ? 1 : 0);
  return (swapped(a, b) + swapped(a, c) + swapped(b, c)) % 2 === 0;
}

const sizeOf = (box: Box, own: readonly Axis[]): string =>
  own.map((axis) => box.hi[axis].sub(box.lo[axis])).join(' x ');

/** Something that lies along one own axis of a piece, as it reads when that axis runs forwards and backwards. */
interface Along {
  readonly at: number;
  readonly forwards: string;
  readonly backwards: string;
}

const said = (word: Along, backwards: readonly boolean[]): string =>
  backwards[word.at] ? word.backwards : word.forwards;

/** Every cut and band, measured from the middle of the piece along its own axes, in words that a turn may change. */
function describe(part: FittedPart, box: Box, own: readonly Axis[]): readonly (readonly (string | Along)[])[] {
  const middles = own.map((axis) => box.lo[axis].add(box.hi[axis]).div(Rational.TWO));
  const from = (at: number, point: Point): Rational => point[own[at] as Axis].sub(middles[at] as Rational);
  const point = (p: Point): Along[] =>
    own.map((_, at) => {
      const value = from(at, p);
      return { at, forwards: value.toString(), backwards: value.neg().toString() };
    });
  const way = (side: Side): Along => {
    const at = own.indexOf(axisOf(side));
    const high = isHigh(side);
    return { at, forwards: `${at}${high ? '+' : '-'}`, backwards: `${at}${high ? '-' : '+'}` };
  };
  const space = (taken: Box): Along[] =>
    own.map((_, at) => {
      const [lo, hi] = [from(at, taken.lo), from(at, taken.hi)];
      return { at, forwards: `${lo}..${hi}`, backwards: `${hi.neg()}..${lo.neg()}` };
    });
  const lengths = new Map<Bounded, string>();
  const printed = (length: Bounded): string => {
    const text = lengths.get(length) ?? length.value.toFixed(4);
    lengths.set(length, text);
    return text;
  };
  const cut = (c: Cut): readonly (string | Along)[] => {
    if (c.kind === 'bevel') return [`bevel ${c.angle.toFixed(4)}`, way(c.side), way(c.outer)];
    if (c.kind === 'notch') return ['notch', ...space(c.box)];
    if ('box' in c) return ['recess', way(c.surface), ...space(c.box)];
    if (c.turn) return turnedOpening(c, c.turn, own, middles);
    const { kind, surface, run, diameter, width, depth, length, fromToe } = c;
    const figures = `${own.indexOf(run)} ${diameter} ${width} ${depth} ${printed(length)} ${fromToe ?? ''}`;
    return [kind, way(surface), figures, ...point(c.centre)];
  };
  const cants = part.cant ? [cantWords(part.cant, own, way)] : [];
  return [...part.cuts.map(cut), ...cants, ...part.bands.map((band) => ['band', way(band.side), band.band])];
}

/** A cant by its two sides and what it takes of each, the own axes in order. */
function cantWords(
  { corner, legs }: FittedCant,
  own: readonly Axis[],
  way: (side: Side) => Along,
): readonly (string | Along)[] {
  const [a, b] = corner;
  const words = [[way(a), `${legs[0]}`] as const, [way(b), `${legs[1]}`] as const];
  return ['cant', ...(own.indexOf(axisOf(a)) < own.indexOf(axisOf(b)) ? words : words.reverse()).flat()];
}

/** A slot along another part's run: its place and directions to a ten-thousandth, since they are roots. */
function turnedOpening(
  cut: Extract<Cut, { slot: string }>,
  turn: Turn,
  own: readonly Axis[],
  middles: readonly Rational[],
): readonly (string | Along)[] {
  const { kind, centre, run, surface, diameter, width, depth, length } = cut;
  const words = (vector: Vector): Along[] =>
    own.map((axis, at) => {
      const value = vector[AXES.indexOf(axis) as 0 | 1 | 2];
      return { at, forwards: rounded(value), backwards: rounded(-value) };
    });
  const place = placeOut(turn, [centre.x.toNumber(), centre.y.toNumber(), centre.z.toNumber()]);
  const from = AXES.map((axis, i) => place[i as 0] - (middles[own.indexOf(axis)]?.toNumber() ?? 0));
  return [
    `${kind} along a cant`,
    `${diameter} ${width} ${depth} ${rounded(length.value)}`,
    ...words([from[0] ?? 0, from[1] ?? 0, from[2] ?? 0]),
    ...words(directionOut(turn, normal(surface))),
    ...words(directionOut(turn, normal(highSide(run)))),
  ];
}

/** Zero has no sign here. */
const rounded = (value: number): string => (Math.round(value * 1e4) / 1e4 + 0).toFixed(4);

/** What two parts must have in common to be one piece, without looking at where anything is cut into them. */
function roughly(part: FittedPart): string {
  if (!part.box) return `unknown ${part.id}`;
  const { length, width, thickness } = pieceAxes(part);
  return `${part.material}; ${part.cuts.length}; ${part.bands.length}; ${sizeOf(part.box, [length, width, thickness])}`;
}

/** Numbers parts so that the same pieces share a number, counting in the order of the parts. */
export function numberPieces(parts: readonly FittedPart[]): readonly FittedPart[] {
  const known = new Map<string, Known[]>();
  let count = 0;
  return parts.map((part) => {
    const key = roughly(part);
    const others = known.get(key);
    if (!others) {
      known.set(key, [new Known(part, count)]);
      return { ...part, same: count++ };
    }
    const own = new Known(part, count);
    const found = others.find((other) => own.is(other));
    if (!found) others.push(own);
    return { ...part, same: found ? found.same : count++ };
  });
}

/** A part with its number, laid out for comparing as far as it has to be: that is dear, and mostly needless. */
class Known {
  private readonly own: readonly [Axis, Axis, Axis];
  private measured: Moments | undefined;
  private writer: ((turn: TurnedOver) => string) | undefined;
  private lying: string | undefined;

  constructor(
    private readonly part: FittedPart,
    readonly same: number,
  ) {
    const { length, width, thickness } = pieceAxes(part);
    this.own = [length, width, thickness];
  }

  /** Whether the two are one piece; both are alike roughly. */
  is(other: Known): boolean {
    const [box, place] = [this.part.box, other.part.box];
    if (!box || !place) return false;
    if (liesAlike(this.part, other.part)) return true;
    const [moments, wanted] = [this.moments(box), other.moments(place)];
    return TURNS.some((turn) => couldBe(moments, turn, wanted) && this.write(box, turn) === other.asItLies(place));
  }

  private moments(box: Box): Moments {
    this.measured ??= momentsOfPiece(this.part, box, this.own);
    return this.measured;
  }

  private asItLies(box: Box): string {
    this.lying ??= this.write(box, AS_IT_LIES);
    return this.lying;
  }

  private write(box: Box, turn: TurnedOver): string {
    this.writer ??= writerOf(this.part, box, this.own, false);
    return this.writer(turn);
  }
}
