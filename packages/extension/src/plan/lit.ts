import type { PlanRows } from '@dryfit/language/protocol';
import { type At, holds } from '../panel/linking.js';
import { rowsAt } from '../slots/rows.js';

/** What of a plan a place of a text belongs to: rows as "set-up/row", settings as "set-up/setting", counted from 0. */
export function litAt(
  { setUps }: Pick<PlanRows, 'setUps'>,
  uri: string,
  at: At,
): { rows: string[]; settings: string[] } {
  const rows = setUps.flatMap(({ rows: own }, i) => own.map((row, j) => ({ ...row, name: `${i}/${j}` })));
  return {
    rows: rowsAt({ rows }, uri, at).flatMap((row) => rows[row]?.name ?? []),
    settings: setUps.flatMap(({ settings }, i) =>
      settings.flatMap(({ places }, j) => (places.some((place) => holds(place, uri, at)) ? [`${i}/${j}`] : [])),
    ),
  };
}

/** True if a plan has to do with a text. */
export function planDrawsOn({ setUps, places }: Pick<PlanRows, 'setUps' | 'places'>, uri: string): boolean {
  const all = [
    ...places,
    ...setUps.flatMap((setUp) => [...setUp.rows, ...setUp.settings].flatMap((one) => one.places)),
  ];
  return all.some((place) => place.uri === uri);
}
