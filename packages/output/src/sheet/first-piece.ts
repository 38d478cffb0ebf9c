import { firstPieces, type LengthFormat, type SetUp } from '@dryfit/engine';
import { endsWords, type FirstRow, firstRows, unsaidWords } from '../plan/first-piece-words.js';
import { hasFences } from '../plan/holding.js';
import type { PlannedJob } from '../plan/tables.js';
import { fitted, wrapped } from './metrics.js';
import type { Block, Pen } from './page.js';

const ROW = 4.1;
const HEAD = 8.8;
const TITLE = 4.4;
const SMALL = 2.9;
/** Narrower than this, its rows stand in one column. */
const TWO_COLUMNS = 150;
const BETWEEN = 5;

/** What to measure on the first piece at each fence, with what it may be; empty where nothing is milled. */
export function firstPieceBlock(job: PlannedJob, setUp: SetUp, width: number, format: LengthFormat): Block {
  const lists = gathered(job, setUp, format).map((one) => list(one, width));
  return {
    height: lists.reduce((sum, { height }) => sum + height, 0),
    draw(pen, x, y) {
      let at = y;
      for (const one of lists) {
        one.draw(pen, x, at);
        at += one.height;
      }
    },
  };
}

/** First pieces that are measured alike. */
interface Gathered {
  readonly fences: readonly string[];
  readonly rows: readonly FirstRow[];
  readonly note: string;
  /** Others are milled after it. */
  readonly more: boolean;
}

function gathered(job: PlannedJob, setUp: SetUp, format: LengthFormat): readonly Gathered[] {
  const found = new Map<string, { fences: string[]; rows: readonly FirstRow[]; note: string; more: boolean }>();
  for (const piece of firstPieces(setUp, job.items)) {
    const rows = firstRows(piece, format.units);
    const note = `${endsWords(piece, format.units)} ${unsaidWords(piece.unsaid)}`.trim();
    const more = setUp.operations.some(({ half, count }) => half.hand === piece.hand && count > 1);
    const key = JSON.stringify([rows, note, more]);
    const { half, part } = piece.operation;
    const fence = half.turn || !hasFences(job) ? `${part.id}, marked out` : `${part.id} at the ${piece.hand} fence`;
    const same = found.get(key);
    if (same) same.fences.push(fence);
    else found.set(key, { fences: [fence], rows, note, more });
  }
  return [...found.values()];
}

function list({ fences, rows, note, more }: Gathered, width: number): Block {
  const columns = width >= TWO_COLUMNS ? 2 : 1;
  const perColumn = Math.ceil(rows.length / columns);
  const wide = (width - BETWEEN * (columns - 1)) / columns;
  const notes = note === '' ? [] : wrapped(note, width, SMALL);
  const title = more
    ? `FIRST PIECE (${fences.join('; ')}): measure it before you mill the others`
    : `MEASURE (${fences.join('; ')}) before you go on`;
  const titles = wrapped(title, width, 3.6, true);
  const over = (titles.length - 1) * TITLE;
  return {
    height: over + HEAD + perColumn * ROW + notes.length * 3.4 + 1,
    draw(pen, x, y) {
      const top = y + over;
      for (const [i, line] of titles.entries()) pen.text(x, y + 3.8 + i * TITLE, line, 3.6, { bold: true });
      for (let column = 0; column < columns; column++) {
        const left = x + column * (wide + BETWEEN);
        heads(pen, left, top + 7.4, wide);
        rows.slice(column * perColumn, (column + 1) * perColumn).forEach((row, i) => {
          figures(pen, row, left, top + HEAD + (i + 1) * ROW - 1.2, wide);
        });
      }
      notes.forEach((line, i) => {
        pen.text(x, top + HEAD + perColumn * ROW + (i + 1) * 3.4 - 0.6, line, SMALL);
      });
    },
  };
}

/** Where the columns of figures end, from the right edge of a list, mm. */
const ENDS = { wanted: 27, least: 13.5, most: 0 } as const;
const FIGURE = 11.8;

function heads(pen: Pen, x: number, y: number, width: number): void {
  pen.text(x, y, 'measure', 2.7);
  pen.text(x + width - ENDS.wanted, y, 'should be', 2.7, { align: 'end' });
  pen.text(x + width - ENDS.least, y, 'least', 2.7, { align: 'end' });
  pen.text(x + width - ENDS.most, y, 'most', 2.7, { align: 'end' });
  pen.line([x, y + 0.9], [x + width, y + 0.9], 0.2);
}

function figures(pen: Pen, row: FirstRow, x: number, y: number, width: number): void {
  const room = width - ENDS.wanted - FIGURE;
  pen.text(x, y, row.what, fitted(row.what, room, 3.2));
  const isOne = row.least === row.most && !/\d/.test(row.least);
  if (isOne) pen.text(x + width, y, row.most, 3.2, { align: 'end', bold: true });
  for (const key of isOne ? (['wanted'] as const) : (['wanted', 'least', 'most'] as const)) {
    const text = row[key];
    const bold = key !== 'wanted';
    pen.text(x + width - ENDS[key], y, text, fitted(text, FIGURE, 3.4, bold), { align: 'end', bold });
  }
}
