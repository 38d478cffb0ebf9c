import { searchStacks } from '../joints/spacers.js';
import { Rational } from '../number/rational.js';
import type { Jig } from '../spec/stock.js';

/** Spacers of one width, and how many of them. */
export interface SpacerCount {
  /** mm. */
  readonly width: Rational;
  /** ≥ 1. */
  readonly count: number;
}

/** So many of each, widest first. */
export function counted(pieces: readonly Rational[]): readonly SpacerCount[] {
  const found: { width: Rational; count: number }[] = [];
  for (const width of [...pieces].sort((a, b) => b.compare(a))) {
    const last = found.at(-1);
    if (last?.width.equals(width)) last.count++;
    else found.push({ width, count: 1 });
  }
  return found;
}

/** What is left of spacers when some are taken, each piece once; what is taken and not there is left out of account. */
export function without(owned: readonly Rational[], taken: readonly Rational[]): readonly Rational[] {
  const left = [...owned];
  for (const piece of taken) {
    const at = left.findIndex((one) => one.equals(piece));
    if (at >= 0) left.splice(at, 1);
  }
  return left;
}

/**
 * A second stack just as wide as the first, of no more pieces, out of what the shop has beside it: the errors of its pieces
 * are then no greater. Undefined where it has none.
 */
export function secondStack(stack: readonly Rational[], { spacers }: Jig): readonly Rational[] | undefined {
  const left = without(spacers, stack);
  // The same pieces again where they are there, since that is what the operator looks for.
  if (without(stack, left).length === 0) return stack;
  const { found } = searchStacks(Rational.sum(stack), left, ({ off }) => off.isZero());
  return found && found.pieces.length <= stack.length ? found.pieces : undefined;
}

/** What a set-up takes of a shop's spacers, where its setting is made up of them. */
export interface FenceSpacers {
  /** What stands at each fence that a piece goes to; empty for one that none goes to. */
  readonly left: readonly Rational[];
  readonly right: readonly Rational[];
  /**
   * `one`: pieces go to one fence only. `both`: a stack stands at each. `in turn`: the shop has not the pieces for two, so that
   * the one stack goes from fence to fence, and no pieces lie at both at once.
   */
  readonly fences: 'one' | 'both' | 'in turn';
  /** Present where a second stack would let pieces lie at both fences: what it lacks, and how many times fewer one is laid down. */
  readonly lacks?: { readonly pieces: readonly SpacerCount[]; readonly spares: number } | undefined;
  /** All that has to be there at once, those between pieces in a row as well. */
  readonly needed: readonly SpacerCount[];
}

/** The most of each width that any of several needs at once, widest first. */
export function mostOfEach(lists: readonly (readonly SpacerCount[])[]): readonly SpacerCount[] {
  const most = new Map<string, SpacerCount>();
  for (const one of lists.flat()) {
    const known = most.get(String(one.width));
    if (!known || known.count < one.count) most.set(String(one.width), one);
  }
  return [...most.values()].sort((a, b) => b.width.compare(a.width));
}
