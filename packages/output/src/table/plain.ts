import type { LengthFormat } from '@dryfit/engine';
import { printText } from '../print/length.js';
import { type Paint, PLAIN } from '../print/paint.js';
import { visible } from '../print/visible.js';
import { type Laid, layout, noteLines, padded, widths } from './layout.js';
import type { Table } from './table.js';

/** A table as aligned text. */
export function toPlain(table: Table, format: LengthFormat, paint: Paint = PLAIN): string {
  const laid = layout(table, format);
  const lines = [paint.strong(visible(printText(table.title, format)))];
  if (table.warning !== undefined) lines.push(paint.error(`WARNING: ${table.warning}`));
  lines.push('');
  if (laid.rows.length > 0) lines.push(...aligned(laid, paint), '');
  for (const note of noteLines(table, laid, format)) lines.push(note);
  if (table.cautions.length > 0) lines.push(`Before you start: ${table.cautions.join(' ')}`);
  return `${lines.join('\n').trimEnd()}\n`;
}

function aligned(laid: Laid, paint: Paint): string[] {
  const wide = widths(laid.headings, laid.rows);
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => padded(cell, wide[i] as number, laid.right[i] as boolean))
      .join('  ')
      .trimEnd();
  return [line(laid.headings), paint.faint(line(wide.map((width) => '-'.repeat(width)))), ...laid.rows.map(line)];
}
