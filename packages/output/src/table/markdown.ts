import type { LengthFormat } from '@dryfit/engine';
import { printText } from '../print/length.js';
import { visible } from '../print/visible.js';
import { layout, noteLines, padded, widths } from './layout.js';
import type { Table } from './table.js';

/**
 * A table as a Markdown page (with the pipe tables of GitHub Flavored Markdown): title, warning, the table,
 * its notes, and the cautions. Names from a spec are escaped, so that none of them becomes markup.
 */
export function toMarkdown(table: Table, format: LengthFormat): string {
  const blocks = [`# ${escaped(visible(printText(table.title, format)))}`];
  if (table.warning !== undefined) blocks.push(`> **WARNING:** ${escaped(table.warning)}`);
  const laid = layout(table, format);
  if (laid.rows.length > 0) blocks.push(pipes(laid));
  const notes = noteLines(table, laid, format);
  if (notes.length > 0) blocks.push(notes.map((note) => `- ${escaped(note)}`).join('\n'));
  if (table.cautions.length > 0) {
    blocks.push(`**Before you start**\n\n${table.cautions.map((caution) => `- ${escaped(caution)}`).join('\n')}`);
  }
  return `${blocks.join('\n\n')}\n`;
}

function pipes(laid: ReturnType<typeof layout>): string {
  const headings = laid.headings.map(escaped);
  const rows = laid.rows.map((row) => row.map(escaped));
  const wide = widths(headings, rows).map((width) => Math.max(width, 3));
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell, i) => padded(cell, wide[i] as number, laid.right[i] as boolean)).join(' | ')} |`;
  const rule = wide.map((width, i) => (laid.right[i] ? `${'-'.repeat(width - 1)}:` : '-'.repeat(width)));
  return [line(headings), line(rule), ...rows.map(line)].join('\n');
}

/** Plain words in Markdown: every sign that could open markup is escaped, line breaks become spaces. */
export function escaped(words: string): string {
  return words
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_[\]<>|~#&$!]/g, '\\$&')
    .replace(/^([-+])(?=\s|$)/, '\\$1')
    .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2');
}
