import type { FittedPart } from '@dryfit/engine';

/** Compares texts by code units, so that a list has one order on every machine; for sorting. */
export function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Compares parts by name, like parts by their number (shelf 2 before shelf 10); for sorting. */
export function byPart(a: NamedPart, b: NamedPart): number {
  return byText(a.kind, b.kind) || (a.index ?? 0) - (b.index ?? 0);
}

export type NamedPart = Pick<FittedPart, 'id' | 'kind' | 'index'>;

/** Names of parts in one line, runs of like parts drawn together: "base, shelf 1 to 4, shelf 6". */
export function partNames(parts: readonly NamedPart[]): string {
  const sorted = [...parts].sort(byPart);
  const names: string[] = [];
  for (let i = 0; i < sorted.length; i += 1) {
    const first = sorted[i] as NamedPart;
    let last = i;
    while (follows(sorted[last] as NamedPart, sorted[last + 1])) last += 1;
    if (last - i >= 2) {
      names.push(`${first.id} to ${sorted[last]?.index}`);
      i = last;
    } else names.push(first.id);
  }
  return names.join(', ');
}

function follows(part: NamedPart, next: NamedPart | undefined): boolean {
  return next !== undefined && next.kind === part.kind && part.index !== undefined && next.index === part.index + 1;
}
