import { type Bounded, sqrtBounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import { type Contributor, halfOf, middleOf } from './contributor.js';

/** How much of a contributor's error a result takes on. */
export interface StackTerm {
  readonly of: Contributor;
  /** Never zero. */
  readonly coefficient: Rational;
}

/**
 * How far something comes from where it was planned, mm: what is known to be off (a stack of spacers that is not
 * quite the width wanted), and what may be, as a sum of contributors.
 */
export interface Stack {
  readonly shift: Rational;
  readonly terms: readonly StackTerm[];
}

export const NOTHING_OFF: Stack = { shift: Rational.ZERO, terms: [] };
const MINUS_ONE = Rational.of(-1);

export const off = (shift: Rational): Stack => (shift.isZero() ? NOTHING_OFF : { shift, terms: [] });

export const single = (of: Contributor | undefined, coefficient = Rational.ONE): Stack =>
  of && !coefficient.isZero() ? { shift: Rational.ZERO, terms: [{ of, coefficient }] } : NOTHING_OFF;

/** Adds stacks and contributors up; what is added twice is taken together, and may drop out. */
export class Sum {
  private shift = Rational.ZERO;
  private readonly terms: { readonly of: Contributor; coefficient: Rational }[] = [];

  add(of: Contributor | undefined, coefficient: Rational): this {
    if (!of) return this;
    // A dozen terms at most: looking through them is quicker than any table.
    const known = this.terms.find((term) => term.of === of);
    if (known) known.coefficient = known.coefficient.add(coefficient);
    else this.terms.push({ of, coefficient });
    return this;
  }

  off(by: Rational): this {
    this.shift = this.shift.add(by);
    return this;
  }

  stack(stack: Stack, factor: Rational = Rational.ONE): this {
    if (stack === NOTHING_OFF) return this;
    this.off(stack.shift.mul(factor));
    for (const { of, coefficient } of stack.terms) this.add(of, coefficient.mul(factor));
    return this;
  }

  done(): Stack {
    const terms = this.terms.filter(({ coefficient }) => !coefficient.isZero());
    return terms.length === 0 && this.shift.isZero() ? NOTHING_OFF : { shift: this.shift, terms };
  }
}

/** Sum of stacks. */
export function stacked(...stacks: readonly Stack[]): Stack {
  const filled = stacks.filter((stack) => stack !== NOTHING_OFF);
  const [first, ...others] = filled;
  if (!first) return NOTHING_OFF;
  if (others.length === 0) return first;
  return filled.reduce((sum, stack) => sum.stack(stack), new Sum()).done();
}

export function times(stack: Stack, factor: Rational): Stack {
  if (factor.equals(Rational.ONE) || stack === NOTHING_OFF) return stack;
  if (factor.isZero()) return NOTHING_OFF;
  return {
    shift: stack.shift.mul(factor),
    terms: stack.terms.map(({ of, coefficient }) => ({ of, coefficient: coefficient.mul(factor) })),
  };
}

export const reversed = (stack: Stack): Stack => times(stack, MINUS_ONE);
export const less = (a: Stack, b: Stack): Stack => stacked(a, reversed(b));

/** How far off a result can come, mm, least ≤ most. */
export interface Range {
  readonly least: Rational;
  readonly most: Rational;
}

/** Everything off at once, in the direction that adds up: least and most (unequal tolerances kept apart). */
export function worstCase({ shift, terms }: Stack): Range {
  let least = shift;
  let most = shift;
  for (const term of terms) {
    const range = shareOf(term);
    least = least.add(range.least);
    most = most.add(range.most);
  }
  return { least, most };
}

/** What one contributor alone adds to a result. */
export function shareOf({ of, coefficient }: StackTerm): Range {
  const [a, b] = [coefficient.mul(of.plus), coefficient.mul(of.minus).neg()];
  return coefficient.sign() > 0 ? { least: b, most: a } : { least: a, most: b };
}

/** Root sum square: errors of their own, added as independent ones are, about the middle they stray around. */
export interface RootSumSquare {
  readonly middle: Rational;
  /** Half the range: √Σ(coefficient · half the contributor's range)². */
  readonly half: Bounded;
  /** The same squared, exactly. */
  readonly squared: Rational;
}

/**
 * Root sum square about the shifted mean: an unequal tolerance strays about the middle of its range by half of it
 * (F. Scholz, "Tolerance Stack Analysis Methods", Boeing 1995).
 */
export function rootSumSquare({ shift, terms }: Stack): RootSumSquare {
  let middle = shift;
  let squared = Rational.ZERO;
  for (const { of, coefficient } of terms) {
    middle = middle.add(coefficient.mul(middleOf(of)));
    const half = coefficient.mul(halfOf(of));
    squared = squared.add(half.mul(half));
  }
  return { middle, half: sqrtBounded(squared), squared };
}

/** What one contributor has to do with a result. */
export interface Contribution {
  readonly of: Contributor;
  readonly coefficient: number;
  /** What it adds at the worst, either way, mm. */
  readonly least: number;
  readonly most: number;
  /** Its part of the root sum square, squared: 0 to 1. */
  readonly share: number;
}

/** Contributions, the largest first; equal ones by id, so that the order of a text never shows. */
export function contributions(stack: Stack): readonly Contribution[] {
  const total = rootSumSquare(stack).squared.toNumber();
  return stack.terms
    .map((term) => {
      const { least, most } = shareOf(term);
      const half = term.coefficient.mul(halfOf(term.of)).toNumber();
      return {
        of: term.of,
        coefficient: term.coefficient.toNumber(),
        least: least.toNumber(),
        most: most.toNumber(),
        share: total === 0 ? 0 : Math.min(1, (half * half) / total),
      };
    })
    .sort(bySize);
}

export const bySize = (a: Contribution, b: Contribution): number =>
  b.most - b.least - (a.most - a.least) || (a.of.id < b.of.id ? -1 : 1);
