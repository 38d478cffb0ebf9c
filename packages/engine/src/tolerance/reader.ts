import type { Contributor } from './contributor.js';
import type { Curve } from './curve.js';
import type { Stack } from './stack.js';

export const contributorsOf = (stack: Stack): readonly Contributor[] => stack.terms.map(({ of }) => of);

/** Reads stacks and contributors off a list of how far each of `of` is off. */
export function reader(of: readonly Contributor[]) {
  const place = new Map(of.map((one, i) => [one.id, i]));
  const one = (contributor: Contributor | undefined, off: readonly number[]): number =>
    (contributor && off[place.get(contributor.id) ?? -1]) ?? 0;
  const sum = (stack: Stack, off: readonly number[]): number =>
    stack.terms.reduce(
      (total, term) => total + term.coefficient.toNumber() * one(term.of, off),
      stack.shift.toNumber(),
    );
  return { of, one, sum };
}

/** A curve over what several stacks come to: `at` is given each of them, in their order. */
export function overStacks(stacks: readonly Stack[], at: (...sums: number[]) => number): Curve {
  const read = reader([...new Set(stacks.flatMap(contributorsOf))]);
  return { of: read.of, at: (off) => at(...stacks.map((stack) => read.sum(stack, off))) };
}
