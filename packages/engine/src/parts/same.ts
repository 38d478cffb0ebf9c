import type { Box, Cut, FittedPart, Point } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { AXES, type Axis, axisOf, isHigh, type Side, thicknessAxis } from '../spec/sides.js';

/** One of a piece's own axes: the cabinet axis it lies along, and which way it runs. */
interface OwnAxis {
  readonly axis: Axis;
  readonly sign: Rational;
}

/** A piece's length, width and thickness, in that order. */
export interface PieceAxes {
  readonly length: Axis;
  readonly width: Axis;
  readonly thickness: Axis;
}

const PLUS = Rational.ONE;
const MINUS = Rational.of(-1);
/** Turning a piece over about its length, width or thickness, or not at all. */
const TURNS: readonly (readonly [Rational, Rational, Rational])[] = [
  [PLUS, PLUS, PLUS],
  [PLUS, MINUS, MINUS],
  [MINUS, PLUS, MINUS],
  [MINUS, MINUS, PLUS],
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
  const order = [length, width, thickness] as const;
  // Own axes must be right-handed in every part, or mirror images would be taken for one piece.
  const third = isEven(order) === mirrored ? MINUS : PLUS;
  const size = order.map((axis) => box.hi[axis].sub(box.lo[axis])).join(' x ');
  const bodies = TURNS.map(([a, b, c]) =>
    describe(part, box, [
      { axis: length, sign: a },
      { axis: width, sign: b },
      { axis: thickness, sign: c.mul(third) },
    ]),
  );
  return `${part.material}; ${size}; ${bodies.sort()[0]}`;
}

/** Whether three axes are an even permutation of x, y, z. */
function isEven([a, b, c]: readonly [Axis, Axis, Axis]): boolean {
  const swapped = (p: Axis, q: Axis): number => (AXES.indexOf(p) > AXES.indexOf(q) ? 1 : 0);
  return (swapped(a, b) + swapped(a, c) + swapped(b, c)) % 2 === 0;
}

/** Every cut and band, measured from the middle of the piece along its own axes. */
function describe(part: FittedPart, box: Box, own: readonly OwnAxis[]): string {
  const from = (axis: Axis, value: Rational, sign: Rational): Rational =>
    value.sub(box.lo[axis].add(box.hi[axis]).div(Rational.TWO)).mul(sign);
  const point = (p: Point): string => own.map(({ axis, sign }) => from(axis, p[axis], sign)).join(',');
  const way = (side: Side): string => {
    const at = own.findIndex(({ axis }) => axis === axisOf(side));
    return `${at}${isHigh(side) === (own[at]?.sign.sign() === 1) ? '+' : '-'}`;
  };
  const space = (taken: Box): string =>
    own
      .map(({ axis, sign }) => {
        const a = from(axis, taken.lo[axis], sign);
        const b = from(axis, taken.hi[axis], sign);
        return `${Rational.min(a, b)}..${Rational.max(a, b)}`;
      })
      .join(',');
  const cut = (c: Cut): string => {
    if (c.kind === 'bevel') return `bevel ${way(c.side)} ${way(c.outer)}`;
    if (c.kind === 'notch') return `notch ${space(c.box)}`;
    if ('box' in c) return `recess ${way(c.surface)} ${space(c.box)}`;
    const { kind, surface, run, diameter, width, depth, length, fromToe } = c;
    const along = own.findIndex(({ axis }) => axis === run);
    return `${kind} ${way(surface)} ${along} ${diameter} ${width} ${depth} ${length.value.toFixed(4)} ${fromToe ?? ''} ${point(c.centre)}`;
  };
  const bands = part.bands.map((band) => `band ${way(band.side)} ${band.band}`);
  return [...part.cuts.map(cut), ...bands].sort().join('; ');
}

/** Numbers parts so that the same pieces share a number, counting in the order of the parts. */
export function numberPieces(parts: readonly FittedPart[]): readonly FittedPart[] {
  const numbers = new Map<string, number>();
  return parts.map((part) => {
    const signature = pieceSignature(part) ?? `unknown ${part.id}`;
    const same = numbers.get(signature) ?? numbers.size;
    numbers.set(signature, same);
    return { ...part, same };
  });
}
