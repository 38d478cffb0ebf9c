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

/**
 * Each id once, in an order of their own: like parts by number, the rest by name, so that the order of the lines in a
 * spec never shows in a message.
 */
export const once = (ids: Iterable<string>): readonly string[] => [...new Set(ids)].sort(byId);

/** Compares ids such as `shelf 2` and `shelf 10` by name, then by number. */
export function byId(a: string, b: string): number {
  const [nameA, numberA] = split(a);
  const [nameB, numberB] = split(b);
  return nameA === nameB ? numberA - numberB : nameA < nameB ? -1 : 1;
}

function split(id: string): readonly [string, number] {
  if (!id.includes(' ')) return [id, 0];
  const [, name, number] = /^(.*) (\d+)$/.exec(id) ?? [];
  return name === undefined || number === undefined ? [id, 0] : [name, Number(number)];
}
