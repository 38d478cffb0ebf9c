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

/** Columns as wide as their cells; headings wider than that are broken between words. */
function aligned(laid: Laid, paint: Paint): string[] {
  const longestWords = laid.headings.map((heading) =>
    heading.split(' ').reduce((a, b) => (b.length > a.length ? b : a)),
  );
  const wide = widths(longestWords, laid.rows);
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => padded(cell, wide[i] as number, laid.right[i] as boolean))
      .join('  ')
      .trimEnd();
  const headings = laid.headings.map((heading, i) => broken(heading, wide[i] as number));
  const height = Math.max(...headings.map((lines) => lines.length));
  const titles = Array.from({ length: height }, (_, row) =>
    line(headings.map((lines) => lines[row - height + lines.length] ?? '')),
  );
  return [...titles, paint.faint(line(wide.map((width) => '-'.repeat(width)))), ...laid.rows.map(line)];
}

function broken(heading: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of heading.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
