import type { Box, Cut, FittedPart } from '../../fit/fit.js';
import { boundedOf, compareBounded, subBounded } from '../../number/bounded.js';
import { Rational } from '../../number/rational.js';
import { pieceAxes } from '../../parts/same.js';
import { AXES, type Axis, axisOf, outward, type Side } from '../../spec/sides.js';
import type { Connector } from '../../spec/stock.js';

type Three<T> = readonly [T, T, T];

/** Ways a piece can be turned over within its own outline: about its length, its width or its thickness. */
export const TURNS: readonly { readonly words: string; readonly signs: Three<1 | -1> }[] = [
  { words: 'as it stands', signs: [1, 1, 1] },
  { words: 'turned over its length', signs: [1, -1, -1] },
  { words: 'turned over its width', signs: [-1, 1, -1] },
  { words: 'turned end for end', signs: [-1, -1, 1] },
];

/** A slot from the middle of its piece, along length, width and thickness. */
interface Mark {
  readonly cut: Extract<Cut, { readonly slot: string }>;
  readonly surface: { readonly axis: number; readonly sign: number };
  readonly run: number;
  readonly at: () => Three<Rational>;
  /** The same as doubles, to tell at once what lies far off. */
  readonly near: Three<number>;
}

/** A piece by its own axes, which are right-handed in every part. */
export interface Piece {
  readonly part: FittedPart;
  readonly marks: readonly Mark[];
  /** Grooves, bevels, bands and the like, as they read for a turn. */
  readonly rest: (turn: number) => string;
}

/** A piece laid out for comparing; undefined while its sizes are, or where slots run along its cant. */
export function pieceOf(part: FittedPart): Piece | undefined {
  const { box } = part;
  // Slots along a cant are told to a ten-thousandth only: nothing is said of what play there would let pass.
  if (!box || part.cuts.some((cut) => 'slot' in cut && cut.turn)) return undefined;
  const { length, width, thickness } = pieceAxes(part);
  const own: Three<Axis> = [length, width, thickness];
  const signs = own.map((_, i) => (i === 2 && !rightHanded(own) ? -1 : 1));
  const middles = own.map((axis) => box.lo[axis].add(box.hi[axis]).div(Rational.TWO));
  const place = (axis: Axis, value: Rational): Rational => {
    const i = own.indexOf(axis);
    const from = value.sub(middles[i] as Rational);
    return signs[i] === 1 ? from : from.neg();
  };
  const way = (side: Side) => {
    const axis = own.indexOf(axisOf(side));
    return { axis, sign: outward(side) * (signs[axis] as number) };
  };
  const roughly = own.map((_, i) => [(middles[i] as Rational).toNumber(), signs[i] as number] as const);
  const marks = part.cuts.flatMap((cut): Mark[] => {
    if (!('slot' in cut)) return [];
    const at = () => own.map((axis) => place(axis, cut.centre[axis])) as unknown as Three<Rational>;
    const near = roughly.map(([middle, sign], i) => (cut.centre[own[i as 0]].toNumber() - middle) * sign);
    return [{ cut, surface: way(cut.surface), run: own.indexOf(cut.run), at, near: near as unknown as Three<number> }];
  });
  const rest = (turn: number): string => restOf(part, own, place, way, TURNS[turn]?.signs ?? [1, 1, 1]);
  return { part, marks, rest };
}

function rightHanded([a, b, c]: Three<Axis>): boolean {
  const swapped = (p: Axis, q: Axis): number => (AXES.indexOf(p) > AXES.indexOf(q) ? 1 : 0);
  return (swapped(a, b) + swapped(a, c) + swapped(b, c)) % 2 === 0;
}

/** What is not a slot, written down as it reads once turned. */
function restOf(
  part: FittedPart,
  own: Three<Axis>,
  place: (axis: Axis, value: Rational) => Rational,
  way: (side: Side) => { readonly axis: number; readonly sign: number },
  turn: Three<1 | -1>,
): string {
  const said = (side: Side): string => {
    const { axis, sign } = way(side);
    return `${axis}${sign * (turn[axis] as number) > 0 ? '+' : '-'}`;
  };
  const space = (box: Box): string =>
    own
      .map((axis, i) => {
        const ends = [place(axis, box.lo[axis]), place(axis, box.hi[axis])].map((v) =>
          v.mul(Rational.of(turn[i] as number)),
        );
        return ends.sort((a, b) => a.compare(b)).join('..');
      })
      .join(',');
  const cuts = part.cuts.flatMap((cut) => {
    if ('slot' in cut) return [];
    if (cut.kind === 'bevel') return [`bevel ${cut.angle.toFixed(4)} ${said(cut.side)} ${said(cut.outer)}`];
    return [cut.kind === 'notch' ? `notch ${space(cut.box)}` : `recess ${said(cut.surface)} ${space(cut.box)}`];
  });
  const bands = part.bands.map((band) => `band ${said(band.side)} ${band.band}`);
  const cant = part.cant?.corner.map((side, i) => `cant ${said(side)} ${part.cant?.legs[i]}`) ?? [];
  return [...cuts, ...cant, ...bands].sort().join('; ');
}

/**
 * How far the slots of a piece, turned, lie from those of another at most, along their runs, when every one lies
 * within its connector's play of its counterpart; undefined when one does not, or anything else differs.
 */
export function offWithinPlay(
  piece: Piece,
  turn: number,
  place: Piece,
  connectorOf: (mark: Mark['cut']) => Connector | undefined,
): Rational | undefined {
  if (piece.marks.length !== place.marks.length) return undefined;
  const signs = TURNS[turn]?.signs ?? [1, 1, 1];
  const left = new Set(place.marks);
  let most = Rational.ZERO;
  for (const mark of piece.marks) {
    let best: { readonly mark: Mark; readonly off: Rational } | undefined;
    for (const other of left) {
      const off = offOf(mark, signs, other, connectorOf(mark.cut));
      if (off && (!best || off.lt(best.off))) best = { mark: other, off };
    }
    if (!best) return undefined;
    left.delete(best.mark);
    most = Rational.max(most, best.off);
  }
  return piece.rest(turn) === place.rest(0) ? most : undefined;
}

/** Far above the rounding of doubles, far below anything that can be milled, mm. */
const CLOSE = 1e-3;

function offOf(mark: Mark, signs: Three<1 | -1>, other: Mark, connector: Connector | undefined): Rational | undefined {
  const { surface } = mark;
  if (!connector || mark.run !== other.run) return undefined;
  if (surface.axis !== other.surface.axis || surface.sign * signs[surface.axis as 0] !== other.surface.sign)
    return undefined;
  const playAcross = mark.cut.width.sub(connector.thickness);
  const reach = Math.max(mark.cut.length.value - connector.along.toNumber(), playAcross.toNumber(), 0) + CLOSE;
  for (const i of [0, 1, 2] as const) {
    if (Math.abs(mark.near[i] * signs[i] - other.near[i]) > reach) return undefined;
  }
  if (!milledAlike(mark.cut, other.cut)) return undefined;
  const [here, there] = [mark.at(), other.at()];
  const apart = here.map((v, i) =>
    v
      .mul(Rational.of(signs[i as 0]))
      .sub(there[i as 0])
      .abs(),
  );
  const along = apart[mark.run] as Rational;
  const across = apart.filter((_, i) => i !== mark.run);
  if (across.some((by) => by.sign() > 0 && by.gt(playAcross))) return undefined;
  const playAlong = subBounded(mark.cut.length, boundedOf(connector.along));
  return along.isZero() || compareBounded(playAlong, along) !== -1 ? Rational.max(along, ...across) : undefined;
}

/** The same opening, wherever it lies. */
function milledAlike(a: Mark['cut'], b: Mark['cut']): boolean {
  const toe = a.fromToe && b.fromToe ? a.fromToe.equals(b.fromToe) : a.fromToe === b.fromToe;
  return (
    toe && a.kind === b.kind && a.diameter.equals(b.diameter) && a.width.equals(b.width) && a.depth.equals(b.depth)
  );
}
