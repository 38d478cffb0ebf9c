import type { Cut, FittedPart, Point } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { AXES, type Axis, axisOf, isHigh, type Side, thicknessAxis } from '../spec/sides.js';

/**
 * A piece written down without regard to where it stands: two parts with one signature are the same piece. The
 * piece may be turned about its length, width or thickness (proper rotations), never mirrored; `mirrored` gives
 * the signature of its mirror image instead.
 */
export function pieceSignature(part: FittedPart, mirrored = false): string | undefined {
  const { box } = part;
  if (!box) return undefined;
  const thick = thicknessAxis(part.attitude);
  const along = part.grain === thick ? AXES.find((axis) => axis !== thick)! : part.grain;
  const width = AXES.find((axis) => axis !== thick && axis !== along)!;
  const axes = [along, width, thick] as const;
  // Own axes (length, width, thickness) must be right-handed, or mirror images would look alike.
  const handed = parity(axes) === 1 ? 1 : -1;
  const flips: readonly (readonly [number, number, number])[] = [
    [1, 1, 1],
    [1, -1, -1],
    [-1, 1, -1],
    [-1, -1, 1],
  ];
  const mirror = mirrored ? -handed : handed;
  const size = axes.map((axis) => box.hi[axis].sub(box.lo[axis]).toString()).join(' x ');
  const bodies = flips.map(([a, b, c]) => describe(part, axes, [a, b, c * mirror]));
  bodies.sort();
  return `${part.material}; ${size}; ${bodies[0]}`;
}

/** +1 when (a, b, c) is an even permutation of (x, y, z). */
function parity(axes: readonly [Axis, Axis, Axis]): 1 | -1 {
  const order = axes.map((axis) => AXES.indexOf(axis));
  const swaps = (order[0]! > order[1]! ? 1 : 0) + (order[0]! > order[2]! ? 1 : 0) + (order[1]! > order[2]! ? 1 : 0);
  return swaps % 2 === 0 ? 1 : -1;
}

function describe(part: FittedPart, axes: readonly Axis[], signs: readonly number[]): string {
  const box = part.box!;
  const centre = (axis: Axis): Rational => box.lo[axis].add(box.hi[axis]).div(Rational.TWO);
  const point = (p: Point): string =>
    axes.map((axis, i) => p[axis].sub(centre(axis)).mul(Rational.of(signs[i]!)).toString()).join(',');
  const way = (side: Side): string => {
    const i = axes.indexOf(axisOf(side));
    return `${i}${(isHigh(side) ? 1 : -1) * signs[i]! > 0 ? '+' : '-'}`;
  };
  const cut = (c: Cut): string => {
    if (c.kind === 'bevel') return `bevel ${way(c.side)} ${way(c.outer)}`;
    if ('box' in c) {
      const corners = axes.map((axis, i) => {
        const ends = [c.box.lo[axis], c.box.hi[axis]].map((v) => v.sub(centre(axis)).mul(Rational.of(signs[i]!)));
        return `${Rational.min(ends[0]!, ends[1]!)}..${Rational.max(ends[0]!, ends[1]!)}`;
      });
      return `${c.kind === 'notch' ? 'notch' : `recess ${way(c.surface)}`} ${corners.join(',')}`;
    }
    const { kind, surface, run, diameter, width, depth, length, fromToe } = c;
    const toe = fromToe ? ` ${fromToe}` : '';
    return `${kind} ${way(surface)} ${axes.indexOf(run)} ${diameter} ${width} ${depth} ${length.value.toFixed(4)}${toe} ${point(c.centre)}`;
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
