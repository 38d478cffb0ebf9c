import type { TextPlace } from '@dryfit/language/protocol';
import { type At, holds } from '../panel/linking.js';

/** Rows of a table that a place of a text belongs to: those whose joint it is in, or else those whose part it names. */
export function rowsAt(
  { rows }: { readonly rows: readonly { readonly places: readonly TextPlace[] }[] },
  uri: string,
  at: At,
): readonly number[] {
  const first: number[] = [];
  const other: number[] = [];
  rows.forEach(({ places: [joint, ...others] }, i) => {
    if (joint && holds(joint, uri, at)) first.push(i);
    else if (others.some((place) => holds(place, uri, at))) other.push(i);
  });
  return first.length > 0 ? first : other;
}
