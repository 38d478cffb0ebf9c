import type { Box, Cut, FittedPart } from '../fit/fit.js';
import { placeOut } from '../geometry/turn.js';
import { AXES, type Axis } from '../spec/sides.js';

/**
 * Where the cuts of a piece lie on the whole, in doubles: sums of their coordinates from the middle of the piece,
 * and of products of these. Pieces whose moments differ differ; those whose moments agree have to be compared.
 */
export interface Moments {
  /** Σu, Σv, Σw, Σuv, Σvw, Σuw, Σuvw along length, width and thickness. */
  readonly sums: readonly number[];
  /** What rounding may be off by at most, generously. */
  readonly doubt: number;
}

/** Moments of a piece along its own axes, the third of them run backwards if `other`. */
export function momentsOf(
  { cuts }: Pick<FittedPart, 'cuts'>,
  box: Box,
  own: readonly [Axis, Axis, Axis],
  other: boolean,
): Moments {
  const moments = reckon(cuts, box, own);
  return other ? backwards(moments) : moments;
}

/** The same with the third axis run backwards: those of the mirror image. */
export function backwards({ sums, doubt }: Moments): Moments {
  const [u = 0, v = 0, w = 0, uv = 0, vw = 0, uw = 0, uvw = 0] = sums;
  return { sums: [u, v, -w, uv, -vw, -uw, -uvw], doubt };
}

function reckon(cuts: readonly Cut[], box: Box, own: readonly [Axis, Axis, Axis]): Moments {
  const middle = own.map((axis) => (box.lo[axis].toNumber() + box.hi[axis].toNumber()) / 2);
  const sums = [0, 0, 0, 0, 0, 0, 0];
  let size = 1;
  for (const cut of cuts) {
    if (cut.kind === 'bevel') continue;
    const at = (i: 0 | 1 | 2): number => {
      const axis = own[i];
      const place =
        'box' in cut ? (cut.box.lo[axis].toNumber() + cut.box.hi[axis].toNumber()) / 2 : middleOf(cut, axis);
      return place - (middle[i] as number);
    };
    const [u, v, w] = [at(0), at(1), at(2)];
    const terms = [u, v, w, u * v, v * w, u * w, u * v * w];
    for (let i = 0; i < sums.length; i++) sums[i] = (sums[i] as number) + (terms[i] as number);
    size += (1 + Math.abs(u)) * (1 + Math.abs(v)) * (1 + Math.abs(w));
  }
  return { sums, doubt: size * 1e-9 };
}

function middleOf({ centre, turn }: Extract<Cut, { slot: string }>, axis: Axis): number {
  if (!turn) return centre[axis].toNumber();
  return placeOut(turn, [centre.x.toNumber(), centre.y.toNumber(), centre.z.toNumber()])[
    AXES.indexOf(axis) as 0 | 1 | 2
  ];
}

/** Whether a piece could be another once the axes told run backwards. */
export function couldBe(piece: Moments, backwards: readonly [boolean, boolean, boolean], other: Moments): boolean {
  const [u, v, w] = backwards.map((back) => (back ? -1 : 1)) as [number, number, number];
  const signs = [u, v, w, u * v, v * w, u * w, u * v * w];
  const doubt = piece.doubt + other.doubt;
  return signs.every((sign, i) => Math.abs(sign * (piece.sums[i] as number) - (other.sums[i] as number)) <= doubt);
}
