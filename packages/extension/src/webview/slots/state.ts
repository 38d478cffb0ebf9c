import type { SlotRows } from '@dryfit/language/protocol';

/** All that a reader of the table has set. */
export interface View {
  readonly uri: string;
  /** Title of the cabinet whose slots are listed; all cabinets if empty. */
  readonly cabinet: string;
  /** The part whose slots are listed; all parts if empty. */
  readonly part: string;
  /** Heading of the column it is sorted by; as written by the command line if empty. */
  readonly by: string;
  readonly falling: boolean;
}

export const START: View = { uri: '', cabinet: '', part: '', by: '', falling: false };

/** A click on a heading: rising, then falling, then as it was. */
export function sortedBy(view: View, heading: string): View {
  if (view.by !== heading) return { ...view, by: heading, falling: false };
  return view.falling ? { ...view, by: '', falling: false } : { ...view, falling: true };
}

/** The rows that are listed, by their numbers, in the order they are listed in. */
export function listed({ columns, rows }: Pick<SlotRows, 'columns' | 'rows'>, view: View): readonly number[] {
  const cabinet = titles({ rows }).includes(view.cabinet) ? view.cabinet : '';
  const part = partsOf({ rows }, cabinet).includes(view.part) ? view.part : '';
  const kept = rows.flatMap((row, i) =>
    (cabinet === '' || row.cabinet === cabinet) && (part === '' || row.parts.includes(part)) ? [i] : [],
  );
  const column = columns.findIndex(({ heading }) => heading === view.by);
  if (column < 0) return kept;
  const way = view.falling ? -1 : 1;
  const key = (row: number) => rows[row]?.cells[column]?.sort ?? '';
  return kept.sort((a, b) => way * compare(key(a), key(b)) || a - b);
}

/** Cabinets that have slots, each once. */
export const titles = ({ rows }: Pick<SlotRows, 'rows'>): readonly string[] => [
  ...new Set(rows.map(({ cabinet }) => cabinet)),
];

/** Parts that have slots, each once, in the order of the rows. */
export const partsOf = ({ rows }: Pick<SlotRows, 'rows'>, cabinet: string): readonly string[] => [
  ...new Set(rows.filter((row) => cabinet === '' || row.cabinet === cabinet).flatMap(({ parts }) => parts)),
];

/** Numbers by size, words as people sort them (shelf 2 before shelf 10), numbers before words. */
function compare(a: string | number, b: string | number): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  if (typeof a === 'number') return -1;
  if (typeof b === 'number') return 1;
  return ORDER.compare(a, b);
}

const ORDER = new Intl.Collator('en', { numeric: true });
