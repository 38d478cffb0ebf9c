import type { LengthFormat } from '@dryfit/engine';
import { layout } from './layout.js';
import type { Table } from './table.js';

/** Rows of a table as printed, a row an object from heading to cell; empty cells are left out. */
export function printed(table: Table, format: LengthFormat = { units: 'mm' }): Record<string, string>[] {
  const { headings, rows } = layout(table, format);
  return rows.map((row) =>
    Object.fromEntries(headings.map((heading, i) => [heading, row[i] as string]).filter(([, cell]) => cell !== '')),
  );
}

/** Notes of a table as printed. */
export function noted(table: Table): string[] {
  return table.notes.map((note) =>
    note.map((piece) => (typeof piece === 'object' && 'value' in piece ? String(piece.value) : String(piece))).join(''),
  );
}
