import type { Cell, Row } from './rows.js';

/**
 * Prints rows that follow each other without a gap. Where an author left room to line a column up, in any of the
 * neighbouring rows that have it, all of them are lined up; elsewhere one blank is enough.
 */
export function aligned(rows: readonly Row[]): string[] {
  const lines = rows.map((row) => ' '.repeat(row.indent) + (row.cells[0]?.text ?? ''));
  const all = rows.map((_, index) => index);
  for (const run of runs(all, (index) => `${rows[index]?.indent} ${rows[index]?.kind}`)) column(rows, run, 1, lines);
  for (const run of runs(all, (index) => (rows[index]?.comment === undefined ? undefined : 'comment'))) {
    lineUp(run, (index) => rows[index]?.comment, lines);
  }
  return lines;
}

/** Lines up one column of a run of rows of one kind, then the columns behind it. */
function column(rows: readonly Row[], run: readonly number[], at: number, lines: string[]): void {
  const cell = (index: number) => rows[index]?.cells[at];
  for (const part of runs(run, (index) => cell(index)?.key)) {
    lineUp(part, cell, lines);
    column(rows, part, at + 1, lines);
  }
}

function lineUp(run: readonly number[], cell: (index: number) => Cell | undefined, lines: string[]): void {
  const padded = run.some((index) => cell(index)?.padded);
  const start = (index: number) => width(lines[index] ?? '') + (cell(index)?.gap ?? 0);
  const column = padded && run.length > 1 ? Math.max(...run.map(start)) : 0;
  for (const index of run) {
    const blanks = Math.max(column, start(index)) - width(lines[index] ?? '');
    lines[index] = `${lines[index]}${' '.repeat(blanks)}${cell(index)?.text ?? ''}`;
  }
}

/** Neighbours of one key; what has no key is in no run. */
function runs(indices: readonly number[], key: (index: number) => string | undefined): number[][] {
  const found: { readonly key: string; readonly run: number[] }[] = [];
  let previous: number | undefined;
  for (const index of indices) {
    const now = key(index);
    const last = found.at(-1);
    if (now !== undefined) {
      if (last !== undefined && last.key === now && previous === index - 1 && last.run.at(-1) === previous)
        last.run.push(index);
      else found.push({ key: now, run: [index] });
    }
    previous = index;
  }
  return found.map(({ run }) => run);
}

/** Columns a text takes; what stands behind a line end within it counts. */
const width = (text: string): number => [...text.slice(text.lastIndexOf('\n') + 1)].length;
