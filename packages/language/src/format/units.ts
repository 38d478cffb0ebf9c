import type { Piece, Pieces } from './pieces.js';
import { type Mark, marksOf } from './structure.js';

/** A piece with what the grammar says of it; what is no token of the tree has no mark. */
export interface Placed extends Piece {
  readonly mark?: Mark | undefined;
}

/**
 * What stands on lines of its own: a statement with its braces on one line, or up to its opening brace; a closing
 * brace; a comment between statements.
 */
export interface Unit {
  readonly pieces: readonly Placed[];
  readonly depth: number;
  /** The rule of its first word, for telling lines of one kind; empty for a comment. */
  readonly kind: string;
  /** First in the text or behind an opening brace. */
  readonly first: boolean;
  /** A closing brace. */
  readonly last: boolean;
  /** Part of it could not be read: its lines stay as they are. */
  readonly unread: boolean;
}

/** Cuts a text's pieces into units. */
export function unitsOf(cut: Pieces): Unit[] {
  const marks = cut.root === undefined ? new Map<unknown, Mark>() : marksOf(cut.root);
  const placed = cut.pieces.map((piece): Placed => ({ ...piece, mark: piece.leaf && marks.get(piece.leaf) }));
  const inline = inlineBraces(placed);
  const groups = group(placed, inline);
  const unread = unreadGroups(groups, cut.unreadLines);
  const opensBlock = (pieces: readonly Placed[]) => pieces.some((piece) => isBrace(piece, '{') && !inline.has(piece));
  const units = groups.map((pieces, index): Unit => {
    const head = pieces.find((piece) => piece.mark);
    const before = groups[index - 1];
    return {
      pieces,
      depth: head?.mark?.depth ?? 0,
      kind: head?.mark?.rule ?? '',
      first: before === undefined || opensBlock(before),
      last: head !== undefined && isBrace(head, '}'),
      unread: unread.has(index),
    };
  });
  return placeComments(units);
}

/** A comment between statements stands as deep as what follows it; before a closing brace, as what the braces hold. */
function placeComments(units: readonly Unit[]): Unit[] {
  let depth = 0;
  return units
    .toReversed()
    .map((unit) => {
      if (unit.pieces.every(isComment)) return { ...unit, depth };
      depth = unit.depth + (unit.last ? 1 : 0);
      return unit;
    })
    .reverse();
}

/** The braces of blocks that stand on one line and may stay there. */
function inlineBraces(placed: readonly Placed[]): Set<Placed> {
  const inline = new Set<Placed>();
  const open: { readonly piece: Placed; readonly at: number; holdsBlock: boolean }[] = [];
  placed.forEach((piece, at) => {
    if (isBrace(piece, '{')) {
      for (const block of open) block.holdsBlock = true;
      if (piece.mark?.partner !== undefined) open.push({ piece, at, holdsBlock: false });
    }
    const block = open.at(-1);
    if (block === undefined || !isBrace(piece, '}') || block.piece.mark?.partner?.offset !== piece.start) return;
    open.pop();
    const short = block.piece.line === piece.line && !block.holdsBlock && !LONG.has(piece.mark?.rule ?? '');
    if (short || at === block.at + 1) inline.add(block.piece).add(piece);
  });
  return inline;
}

/** Blocks that always have a line for each thing they hold. */
const LONG = new Set(['Cabinet', 'Job']);

function group(placed: readonly Placed[], inline: ReadonlySet<Placed>): Placed[][] {
  const breaks = breaksOf(placed, inline);
  const groups: Placed[][] = [];
  let nextBreaks = true;
  const commentStarts = placed
    .toReversed()
    .map((piece) => {
      if (isComment(piece)) return nextBreaks;
      nextBreaks = breaks.has(piece);
      return false;
    })
    .reverse();
  placed.forEach((piece, index) => {
    const current = groups.at(-1);
    const fresh = placed[index - 1]?.endLine !== piece.line;
    const starts = isComment(piece)
      ? commentStarts[index] && fresh
      : breaks.has(piece) && !(current?.every(isComment) && !fresh);
    if (current === undefined || starts) groups.push([piece]);
    else current.push(piece);
  });
  return groups;
}

/** The tokens that begin a unit, comments left aside. */
function breaksOf(placed: readonly Placed[], inline: ReadonlySet<Placed>): Set<Placed> {
  const breaks = new Set<Placed>();
  let inside = false;
  let before: Placed | undefined;
  for (const piece of placed) {
    if (isComment(piece)) continue;
    const behind = before !== undefined && isBrace(before) && (before.text === '}' || !inline.has(before));
    const closes = isBrace(piece, '}') && !inline.has(piece);
    if (!inside && (piece.mark?.opens || closes || behind)) breaks.add(piece);
    if (inline.has(piece)) inside = piece.text === '{';
    before = piece;
  }
  return breaks;
}

/** A unit that shares a line with something unread is left as it stands, and so is what shares a line with that. */
function unreadGroups(groups: readonly (readonly Placed[])[], lines: ReadonlySet<number>): Set<number> {
  const unread = new Set<number>();
  const open = new Set(lines);
  for (let grown = open.size > 0; grown; ) {
    grown = false;
    groups.forEach((pieces, index) => {
      if (unread.has(index)) return;
      const [from, to] = linesOf(pieces);
      const span = Array.from({ length: to - from + 1 }, (_, line) => from + line);
      if (!span.some((line) => open.has(line))) return;
      for (const line of span) open.add(line);
      unread.add(index);
      grown = true;
    });
  }
  return unread;
}

/** First and last line of a unit's pieces. */
export function linesOf(pieces: readonly Piece[]): [from: number, to: number] {
  return [pieces[0]?.line ?? 0, pieces.at(-1)?.endLine ?? 0];
}

export const isComment = (piece: Piece): boolean => piece.kind === 'line comment' || piece.kind === 'block comment';

/** True for a brace of the grammar, or for the one asked for. */
export function isBrace(piece: Placed, which?: '{' | '}'): boolean {
  return piece.mark !== undefined && (which === undefined ? /^[{}]$/.test(piece.text) : piece.text === which);
}
