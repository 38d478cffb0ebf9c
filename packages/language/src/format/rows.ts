import { gapBetween, printed } from './spacing.js';
import { isBrace, isComment, type Placed, type Unit } from './units.js';

/** Text that may be moved right to stand under what the line above has in its place. */
export interface Cell {
  readonly text: string;
  /** What it is; lines whose cells are of one kind may line up. */
  readonly key: string;
  /** Blanks before it when nothing is lined up. */
  readonly gap: number;
  /** Its author left more room than that. */
  readonly padded: boolean;
}

/** A printed line. */
export interface Row {
  readonly kind: string;
  readonly indent: number;
  readonly cells: readonly Cell[];
  /** The comment behind its last token. */
  readonly comment?: Cell | undefined;
}

/** Longest line that several are joined to. */
const WIDTH = 120;
const INDENT = 2;

/** A unit's lines: one, unless it is too long for that or a comment stands between. */
export function rowsOf(unit: Unit, lineEnd: string): Row[] {
  const indent = unit.depth * INDENT;
  const pieces = unit.pieces;
  const broken = pieces.some((piece, index) => keepsBreak(pieces[index - 1], piece));
  const one = rowOf(pieces, kindOf(unit.kind), indent, lineEnd);
  if (!broken || (joinable(pieces) && plainText(one).length <= WIDTH)) return [one];
  const rows: Placed[][] = [[]];
  pieces.forEach((piece, index) => {
    if (keepsBreak(pieces[index - 1], piece)) rows.push([]);
    (rows.at(-1) as Placed[]).push(piece);
  });
  return rows.map((row, index) => rowOf(row, '', indent + (index > 0 ? 2 * INDENT : 0), lineEnd));
}

const newLine = (before: Placed, piece: Placed): boolean => piece.line > before.endLine;

/** A brace stays with what stands before it. */
function keepsBreak(before: Placed | undefined, piece: Placed): boolean {
  return before !== undefined && newLine(before, piece) && (before.kind === 'line comment' || !isBrace(piece));
}

/**
 * False if a comment ends one of the lines or has one to itself, and where an `in` would become the unit of the
 * number on the line above: what tells it from one stands behind a comment.
 */
function joinable(pieces: readonly Placed[]): boolean {
  return pieces.every((piece, index) => {
    const [before, after] = [pieces[index - 1], pieces[index + 1]];
    if (before === undefined || !keepsBreak(before, piece)) return true;
    return !isComment(before) && !isComment(piece) && !(piece.text === 'in' && after !== undefined && isComment(after));
  });
}

function rowOf(pieces: readonly Placed[], kind: string, indent: number, lineEnd: string): Row {
  const cells: Cell[] = [];
  let comment: Cell | undefined;
  pieces.forEach((piece, index) => {
    const before = pieces[index - 1];
    const last = cells.pop();
    const text = printed(piece, lineEnd);
    if (before === undefined || last === undefined) {
      cells.push({ text, key: '', gap: 0, padded: false });
      return;
    }
    const trailing = isComment(piece) && index === pieces.length - 1;
    const gap = gapBetween(before, piece, trailing);
    const cell = { text, gap, padded: !newLine(before, piece) && piece.start - before.end > gap };
    const key = columnOf(before, piece, kind);
    if (trailing) comment = { ...cell, key: 'comment' };
    if (trailing) cells.push(last);
    else if (key !== undefined) cells.push(last, { ...cell, key });
    else cells.push({ ...last, text: `${last.text}${' '.repeat(gap)}${text}` });
  });
  return { kind, indent, cells, comment };
}

/** The words of a statement that may stand under each other. */
const COLUMNS: Readonly<Record<string, readonly string[]>> = {
  PartLine: [':', 'of', 'grain'],
  Parameter: [':', '='],
  Extent: ['of', 'over', 'between', 'from'],
  Stock: [':'],
  JobLine: ['of'],
};
/** Entries of a shop file, whose braces may stand under each other. */
const STOCK = ['Material', 'Band', 'Machine', 'Connector', 'Pattern', 'Jig', 'Glue'];

const kindOf = (rule: string): string => (STOCK.includes(rule) ? 'Stock' : rule);

/** What a piece is if it may be lined up. */
function columnOf(before: Placed, piece: Placed, kind: string): string | undefined {
  if (piece.mark === undefined) return undefined;
  if (isBrace(piece)) return piece.text;
  if (piece.mark.opens) return `fact ${piece.text}`;
  const rule = piece.mark.rule === 'DimensionLine' ? 'Extent' : kindOf(piece.mark.rule);
  if (rule === kind && COLUMNS[kind]?.includes(piece.text)) return kind === 'Extent' ? 'form' : piece.text;
  if (kind === 'Extent' && before.mark?.rule === 'Extent') return 'length';
  return kind === 'CutFact' && before.mark?.rule === 'CutFact' ? 'length' : undefined;
}

/** A row's text with nothing lined up. */
function plainText(row: Row): string {
  const cells = row.comment === undefined ? row.cells : [...row.cells, row.comment];
  return cells.reduce((text, cell) => text + ' '.repeat(cell.gap) + cell.text, ' '.repeat(row.indent));
}
