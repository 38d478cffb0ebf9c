import { type Bounded, formatMm, fromBounded, type LengthFormat, Rational } from '@dryfit/engine';
import { printLength, printText } from '../print/length.js';
import { visible } from '../print/visible.js';
import { heading } from './layout.js';
import type { Cell, Column, Table } from './table.js';

/**
 * A table for spreadsheets and programs: RFC 4180 (comma, CRLF after every record, one header record, the same
 * number of fields in each), UTF-8 without a byte order mark.
 *
 * Millimetres are bare decimals of up to four places; inches are text with their unit, `3/4 in`, because a
 * bare `3/4` is taken for a date. A list of lengths becomes numbered columns, one length each. A text that a
 * spreadsheet would run as a formula gets an apostrophe before it; numbers, negative ones included, are left alone.
 *
 * CSV has no comments, and a line that is not a record breaks the table. So a warning is the first field and
 * the cautions the last field of every record: they outlive sorting, filtering and copying a single row.
 */
export function toCsv(table: Table, format: LengthFormat): string {
  const widths = table.columns.map((column, i) => (column.kind === 'lengths' ? longest(table, i) : 1));
  const header = table.columns.flatMap((column, i) => headings(column, widths[i] as number, format));
  const records = table.rows.map((row) =>
    row.flatMap((cell, i) => fields(cell, table.columns[i] as Column, widths[i] as number, format)),
  );
  const all = [framed(table, header, 'Warning', 'Cautions')];
  for (const record of records)
    all.push(framed(table, record, safe(table.warning ?? ''), safe(table.cautions.join(' '))));
  return all.map((record) => `${record.map(quoted).join(',')}\r\n`).join('');
}

function framed(table: Table, record: readonly string[], first: string, last: string): string[] {
  return [...(table.warning === undefined ? [] : [first]), ...record, ...(table.cautions.length === 0 ? [] : [last])];
}

function longest(table: Table, column: number): number {
  return table.rows.reduce((most, row) => {
    const cell = row[column];
    return Math.max(most, cell?.kind === 'lengths' ? cell.lengths.length : 0);
  }, 1);
}

function headings(column: Column, width: number, format: LengthFormat): string[] {
  if (column.kind !== 'lengths') return [heading(column, format)];
  return Array.from({ length: width }, (_, i) => heading({ ...column, heading: `${column.heading} ${i + 1}` }, format));
}

function fields(cell: Cell, column: Column, width: number, format: LengthFormat): string[] {
  if (column.kind === 'lengths') {
    const lengths = cell.kind === 'lengths' ? cell.lengths : [];
    return Array.from({ length: width }, (_, i) => number(lengths[i], format));
  }
  switch (cell.kind) {
    case 'empty':
    case 'lengths':
      return [''];
    case 'text':
      return [safe(visible(printText(cell.text, format, 'table')))];
    case 'count':
      return [String(cell.count)];
    case 'length':
      return [number(cell.length, format)];
  }
}

function number(length: Rational | Bounded | undefined, format: LengthFormat): string {
  if (length === undefined) return '';
  if (format.units === 'mm') {
    const exact = length instanceof Rational ? length : fromBounded(length);
    return formatMm(exact, { decimals: Math.max(format.decimals ?? 2, 4) }).text;
  }
  const [inches = '', lost] = printLength(length, { ...format, unit: false }, 'table').split(' (');
  return `${inches} in${lost === undefined ? '' : ` (${lost}`}`;
}

// What spreadsheets take for the start of a formula, in plain and in full-width form; a leading tab or carriage
// return hides one.
const RUNS = /^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/;

/** A text field that no spreadsheet runs. */
export function safe(field: string): string {
  return RUNS.test(field) ? `'${field}` : field;
}

function quoted(field: string): string {
  return /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}
