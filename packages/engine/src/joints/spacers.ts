import type { Spacer } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import type { Tolerance } from '../spec/input.js';
import type { Jig } from '../spec/stock.js';

/** More than doubles can be off by in a sum of a rack's spacers, as a part of it. */
const ROUNDING = 1e-9;

/** Stacks tried before giving up on a rack of very many spacers. */
const MOST_STACKS = 200_000;

/** A stack of stock spacers, widest first, and how far it is off the wanted width (stack − wanted). */
export interface Stack {
  readonly pieces: readonly Rational[];
  readonly off: Rational;
}

/**
 * Makes up the space between a fence and a part whose datum edge lies `width` in from zero. From stock: the
 * fewest pieces whose sum is within the jig's tolerance of every width the input tolerances allow, the nearest
 * of equally few; else the nearest that can be made.
 */
export function makeUp(width: Rational, tolerance: Tolerance, jig: Jig | undefined, cut: boolean): Spacer {
  const without = (kind: Spacer['kind']): Spacer => ({ width, tolerance, kind, stack: [], off: Rational.ZERO });
  if (width.sign() <= 0) return without('none');
  if (!jig || jig.fences.length === 0) return without('mark out');
  if (cut) return without('cut');
  const within = jig.within ?? Rational.ZERO;
  const far = within.add(Rational.max(tolerance.plus, tolerance.minus)).toNumber();
  const fits = (stack: Stack): boolean => worstOff(stack.off, tolerance).le(within);
  const { found, nearest } = searchStacks(width, jig.spacers, fits, far);
  const stack = found ?? nearest;
  const kind = found ? 'stock' : 'missing';
  return { width, tolerance, kind, stack: stack?.pieces ?? [], off: stack?.off ?? width.neg() };
}

const stackOf = (pieces: readonly Rational[], width: Rational): Stack => ({
  pieces,
  off: Rational.sum(pieces).sub(width),
});

/** Largest distance between the stack and any width within tolerance. */
export function worstOff(off: Rational, tolerance: Tolerance): Rational {
  // off = stack − width; the true width may be `plus` wider or `minus` narrower.
  return Rational.max(off.sub(tolerance.plus).abs(), off.add(tolerance.minus).abs());
}

/**
 * Stacks in order of how many pieces they take; each physical piece at most once. None further off than `far` fits, mm:
 * what doubles tell to be further, and further than the nearest so far, is not reckoned exactly.
 */
export function searchStacks(
  width: Rational,
  stock: readonly Rational[],
  fits: (stack: Stack) => boolean,
  far = 0,
): { readonly found: Stack | undefined; readonly nearest: Stack | undefined } {
  const pieces = [...stock].sort((a, b) => b.compare(a));
  const rough = pieces.map((piece) => piece.toNumber());
  const wanted = width.toNumber();
  let nearest: Stack | undefined;
  let least = Number.POSITIVE_INFINITY;
  let tried = 0;
  for (let size = 1; size <= pieces.length; size++) {
    let found: Stack | undefined;
    const chosen: number[] = [];
    const look = (sum: number): void => {
      tried++;
      const near = Math.abs(sum - wanted);
      if (near > Math.max(far, least) + ROUNDING * (1 + sum + wanted)) return;
      const stack = stackOf(
        chosen.map((i) => pieces[i] as Rational),
        width,
      );
      if (!nearest || stack.off.abs().lt(nearest.off.abs())) {
        nearest = stack;
        least = near;
      }
      if (fits(stack) && (!found || stack.off.abs().lt(found.off.abs()))) found = stack;
    };
    const visit = (from: number, left: number, sum: number): void => {
      if (left === 0) {
        look(sum);
        return;
      }
      for (let i = from; i <= pieces.length - left && tried < MOST_STACKS; i++) {
        if (i > from && pieces[i - 1]?.equals(pieces[i] as Rational)) continue;
        chosen.push(i);
        visit(i + 1, left - 1, sum + (rough[i] as number));
        chosen.pop();
      }
    };
    visit(0, size, 0);
    if (found || tried >= MOST_STACKS) return { found, nearest };
  }
  return { found: undefined, nearest };
}
