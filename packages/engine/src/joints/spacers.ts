import type { Spacer } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import type { Tolerance } from '../spec/input.js';
import type { Jig } from '../spec/stock.js';

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
  const fits = (stack: Stack): boolean => worstOff(stack.off, tolerance).le(within);
  const { found, nearest } = searchStacks(width, jig.spacers, fits);
  const stack = found ?? nearest;
  const kind = found ? 'stock' : 'missing';
  return { width, tolerance, kind, stack: stack?.pieces ?? [], off: stack?.off ?? width.neg() };
}

/** Largest distance between the stack and any width within tolerance. */
export function worstOff(off: Rational, tolerance: Tolerance): Rational {
  // off = stack − width; the true width may be `plus` wider or `minus` narrower.
  return Rational.max(off.sub(tolerance.plus).abs(), off.add(tolerance.minus).abs());
}

/** Stacks in order of how many pieces they take; each physical piece at most once. */
export function searchStacks(
  width: Rational,
  stock: readonly Rational[],
  fits: (stack: Stack) => boolean,
): { readonly found: Stack | undefined; readonly nearest: Stack | undefined } {
  const pieces = [...stock].sort((a, b) => b.compare(a));
  let nearest: Stack | undefined;
  let tried = 0;
  for (let size = 1; size <= pieces.length; size++) {
    let found: Stack | undefined;
    const visit = (from: number, left: number, sum: Rational, chosen: readonly Rational[]): void => {
      if (left === 0) {
        tried++;
        const stack = { pieces: chosen, off: sum.sub(width) };
        if (!nearest || stack.off.abs().lt(nearest.off.abs())) nearest = stack;
        if (fits(stack) && (!found || stack.off.abs().lt(found.off.abs()))) found = stack;
        return;
      }
      for (let i = from; i <= pieces.length - left && tried < MOST_STACKS; i++) {
        const piece = pieces[i] as Rational;
        if (i > from && pieces[i - 1]?.equals(piece)) continue;
        visit(i + 1, left - 1, sum.add(piece), [...chosen, piece]);
      }
    };
    visit(0, size, Rational.ZERO, []);
    if (found || tried >= MOST_STACKS) return { found, nearest };
  }
  return { found: undefined, nearest };
}
