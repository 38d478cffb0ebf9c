import { certificateOf, type Factored } from './factor.js';

/**
 * The equations that a contradiction can be felt in, by index: all those that share a loop with an equation
 * that shares a loop with … one that does not agree. (A loop is a smallest set of equations that say something
 * of one another; equations linked by loops are the connected components of their matroid, and the loops of
 * the spare equations are enough to find them: Oxley, Matroid Theory, 4.3.) Whatever rests on one of these
 * can be worked out another way, with another result; whatever rests on none has one value.
 */
export function suspects(factored: Factored): ReadonlySet<number> {
  const leader = new Map<number, number>();
  const find = (equation: number): number => {
    let at = equation;
    for (let next = leader.get(at); next !== undefined; next = leader.get(at)) {
      // Halving the way for the next time.
      const after = leader.get(next);
      if (after !== undefined) leader.set(at, after);
      at = next;
    }
    return at;
  };
  const inLoops = new Set<number>();
  for (const spare of factored.spare) {
    inLoops.add(spare.index);
    for (const index of certificateOf(factored, spare).keys()) {
      inLoops.add(index);
      const a = find(index);
      const b = find(spare.index);
      if (a !== b) leader.set(a, b);
    }
  }
  const tainted = new Set(factored.bad.map((row) => find(row.index)));
  return new Set([...inLoops].filter((index) => tainted.has(find(index))));
}
