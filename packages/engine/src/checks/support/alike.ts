/**
 * Puts together what a statement does alike in several parts (both sides of a cabinet, all shelves of a row), so
 * that one thing to be changed is told once. Groups keep the order of their first members.
 */
export function alike<T>(items: Iterable<T>, key: (item: T) => readonly unknown[]): readonly (readonly [T, ...T[]])[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const item of items) {
    const name = key(item).map(String).join('\n');
    const group = groups.get(name);
    if (group) group.push(item);
    else groups.set(name, [item]);
  }
  return [...groups.values()];
}

/** Each value once, in order. */
export const once = <T>(values: Iterable<T>): readonly T[] => [...new Set(values)];
