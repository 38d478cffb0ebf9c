import { CompositeCstNodeImpl, type CstNode, LeafCstNodeImpl } from 'langium';

/** How far a stretch of text has moved; only its first line moves sideways. */
export interface Move {
  readonly offset: number;
  readonly lines: number;
  /** The line that the stretch began in, and how far that line's rest has moved sideways. */
  readonly firstLine: number;
  readonly columns: number;
}

/** Fields of a leaf of the syntax tree that tell where it stands; Langium keeps them to itself. */
interface Place {
  _offset: number;
  _startLine: number;
  _startColumn: number;
  _endLine: number;
  _endColumn: number;
}

/** Moves a part of a syntax tree to where its text now is. */
export function moveSyntax(node: CstNode, move: Move): void {
  if (node instanceof CompositeCstNodeImpl) {
    (node as unknown as { _rangeCache: undefined })._rangeCache = undefined;
    for (const child of node.content) moveSyntax(child, move);
  } else if (node instanceof LeafCstNodeImpl) {
    const place = node as unknown as Place;
    place._offset += move.offset;
    if (place._startLine === move.firstLine) place._startColumn += move.columns;
    if (place._endLine === move.firstLine) place._endColumn += move.columns;
    place._startLine += move.lines;
    place._endLine += move.lines;
  }
}

/** Line and column of an offset, both from 0. */
export function lineAndColumn(text: string, offset: number): { readonly line: number; readonly column: number } {
  let line = 0;
  let start = 0;
  for (let i = 0; i < offset; i++) {
    const code = text.charCodeAt(i);
    // Carriage return and line feed together end one line.
    if (code !== LINE_FEED && (code !== CARRIAGE_RETURN || text.charCodeAt(i + 1) === LINE_FEED)) continue;
    line += 1;
    start = i + 1;
  }
  return { line, column: offset - start };
}

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
