import {
  type AstNode,
  type CompositeCstNode,
  type CstNode,
  isCompositeCstNode,
  isLeafCstNode,
  type LangiumCoreServices,
  type LeafCstNode,
  type LexerResult,
  type ParseResult,
} from 'langium';

/** What reads a text: the parser, and its lexer before any missing brace is put in. */
export interface Reader {
  parse(text: string): ParseResult<AstNode>;
  tokens(text: string): LexerResult;
}

/** What the language reads with; the lexer leaves braces as they are written. */
export function readerOf(services: LangiumCoreServices): Reader {
  const { LangiumParser, Lexer } = services.parser;
  return { parse: (text) => LangiumParser.parse(text), tokens: (text) => Lexer.tokenize(text, { mode: 'partial' }) };
}

/** A token, a comment, or a stretch that is no token at all. Lines count from 0, `end` is exclusive. */
export interface Piece {
  readonly kind: 'token' | 'line comment' | 'block comment' | 'unknown';
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly endLine: number;
  /** Its leaf in the tree; absent for comments and for whatever the parser passed over. */
  readonly leaf?: LeafCstNode | undefined;
}

/** A text cut into pieces, with everything a layout needs to know about where they stand. */
export interface Pieces {
  readonly pieces: readonly Piece[];
  /** The source's lines without their ends. */
  readonly lines: readonly string[];
  readonly root: CompositeCstNode | undefined;
  /** Lines that hold something which could not be read, or on which a statement breaks off. */
  readonly unreadLines: ReadonlySet<number>;
}

const LINE_END = /\r\n|\r|\n/;

/** Reads a text and cuts it into pieces in the order they stand. */
export function cut(text: string, reader: Reader): Pieces {
  const parsed = reader.parse(text);
  const lexed = reader.tokens(text);
  const root = parsed.value.$cstNode?.root;
  const leaves = new Map(root === undefined ? [] : leavesOf(root).map((leaf) => [leaf.offset, leaf]));
  const lineOf = lineFinder(text);
  const piece = (kind: Piece['kind'], start: number, length: number): Piece => ({
    kind,
    text: text.slice(start, start + length),
    start,
    end: start + length,
    line: lineOf(start),
    endLine: lineOf(start + length - 1),
    leaf: kind === 'token' ? leaves.get(start) : undefined,
  });
  const tokens = lexed.tokens.map((token) => piece('token', token.startOffset, token.image.length));
  const comments = lexed.hidden.map(({ startOffset, image }) =>
    piece(image.startsWith('//') ? 'line comment' : 'block comment', startOffset, image.length),
  );
  const unknown = lexed.errors.map(({ offset, length }) => piece('unknown', offset, length));
  const pieces = [...tokens, ...comments, ...unknown].sort((a, b) => a.start - b.start);

  const unread = new Set<number>();
  const mark = (start: number, end: number) => {
    for (let line = lineOf(start); line <= lineOf(Math.max(start, end - 1)); line++) unread.add(line);
  };
  for (const { kind, leaf, start, end } of pieces) {
    if (kind === 'unknown' || (kind === 'token' && leaf === undefined)) mark(start, end);
  }
  for (const { offset, length } of parsed.lexerErrors) mark(offset, offset + length);
  for (const place of parsed.parserErrors.flatMap(brokenAt))
    mark(place.startOffset, place.startOffset + place.image.length);
  return { pieces, lines: text.split(LINE_END), root, unreadLines: unread };
}

/** Line ends of a text: those that most of its lines have. */
export function lineEnd(text: string): '\r\n' | '\n' {
  const both = text.split('\r\n').length - 1;
  return both > 0 && both >= text.split('\n').length - 1 - both ? '\r\n' : '\n';
}

export function leavesOf(node: CstNode): LeafCstNode[] {
  if (isLeafCstNode(node)) return node.hidden ? [] : [node];
  return isCompositeCstNode(node) ? node.content.flatMap(leavesOf) : [];
}

interface Place {
  readonly startOffset: number;
  readonly image: string;
}

/** The token at which a statement breaks off: the last one read, else the one that could not be. */
function brokenAt({ token, ...error }: ParseResult<AstNode>['parserErrors'][number]): Place[] {
  const { previousToken } = error as { previousToken?: Place };
  return [previousToken, token]
    .filter((place) => place !== undefined && place.startOffset >= 0 && place.image !== '')
    .slice(0, 1) as Place[];
}

function lineFinder(text: string): (offset: number) => number {
  const starts = [0];
  for (const { index, 0: end } of text.matchAll(/\r\n|\r|\n/g)) starts.push(index + end.length);
  return (offset) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  };
}
