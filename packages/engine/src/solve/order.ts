import type { LinearTerm } from './types.js';

/**
 * Puts equations into the order of a walk along them: from a plane to an equation that names it, on to that
 * equation's other planes, and so to the next, deep before wide. A chain comes out link by link. `seeds` are
 * the planes to start from; equations that no walk from them reaches start walks of their own.
 */
export function alongChain<T>(
  items: readonly T[],
  termsOf: (item: T) => readonly LinearTerm[],
  seeds: readonly number[],
): readonly T[] {
  if (items.length < 2) return items;
  const touching = new Map<number, T[]>();
  for (const item of items) {
    for (const { unknown } of termsOf(item)) {
      const list = touching.get(unknown);
      if (list) list.push(item);
      else touching.set(unknown, [item]);
    }
  }
  const walked = new Set<T>();
  const walk = (from: readonly number[]) => {
    const stack = [...from].reverse();
    for (let plane = stack.pop(); plane !== undefined; plane = stack.pop()) {
      const next = touching.get(plane)?.find((item) => !walked.has(item));
      if (!next) continue;
      walked.add(next);
      // Back to this plane once the walk from the next one is over: it may name more equations.
      stack.push(plane);
      for (const { unknown } of [...termsOf(next)].reverse()) if (unknown !== plane) stack.push(unknown);
    }
  };
  walk(seeds);
  for (const item of items) {
    if (walked.has(item)) continue;
    walked.add(item);
    walk(termsOf(item).map((term) => term.unknown));
  }
  return [...walked];
}
