import type { LengthFormat } from '@dryfit/engine';
import { printLength, printText } from '../print/length.js';
import { visible } from '../print/visible.js';
import type { Cell, Column, Table } from './table.js';

/** A table with every cell printed, columns that have nothing to say left out. */
export interface Laid {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly right: readonly boolean[];
  /** Which column of the table each is. */
  readonly kept: readonly number[];
}

/** Prints the cells of a table for people: one string a cell, units in the headings. */
export function layout(table: Table, format: LengthFormat): Laid {
  const kept = table.columns.flatMap((column, i) =>
    column.optional && table.rows.every((row) => row[i]?.kind === 'empty') ? [] : [i],
  );
  const columns = kept.map((i) => table.columns[i] as Column);
  return {
    headings: columns.map((column) => heading(column, format)),
    rows: table.rows.map((row) => kept.map((i) => visible(cellText(row[i] as Cell, format)))),
    right: columns.map((column) => column.kind === 'count' || column.kind === 'length'),
    kept,
  };
}

/** A column's heading, with the unit of its lengths. */
export function heading(column: Column, format: LengthFormat): string {
  const unit = column.kind === 'length' || column.kind === 'lengths' ? ` (${format.units})` : '';
  return `${column.heading}${unit}`;
}

/** Sentences under a table: its notes, and what the sign of a rounded length means when one stands in it. */
export function noteLines(table: Table, laid: Laid, format: LengthFormat): string[] {
  const notes = table.notes.map((note) => visible(printText(note, format)));
  const cells = laid.rows.flat();
  if (cells.some((cell) => cell.includes('≈'))) {
    notes.push(`≈ marks a length rounded to ${10 ** -(format.decimals ?? 2)} mm; its exact value is in fit.json.`);
  }
  if (format.units === 'in' && cells.some((cell) => / mm\)/.test(cell))) {
    notes.push('(+0.1 mm) after a length is what rounding it lost: the two together are the exact length.');
  }
  return notes;
}

function cellText(cell: Cell, format: LengthFormat): string {
  switch (cell.kind) {
    case 'empty':
      return '';
    case 'text':
      return printText(cell.text, format, 'table');
    case 'count':
      return String(cell.count);
    case 'length':
      return printLength(cell.length, format, 'table');
    case 'lengths':
      return cell.lengths.map((length) => printLength(length, format, 'table')).join(', ');
  }
}

/** Width of each column in characters. */
export function widths(headings: readonly string[], rows: readonly (readonly string[])[]): number[] {
  return headings.map((heading, i) =>
    Math.max(...[heading, ...rows.map((row) => row[i] ?? '')].map((cell) => [...cell].length)),
  );
}

/** Pads to a width in characters; numbers stand to the right. */
export function padded(cell: string, width: number, right: boolean): string {
  const space = ' '.repeat(Math.max(0, width - [...cell].length));
  return right ? space + cell : cell + space;
}
