import type { LexerResult } from 'langium';
import { opensPlacing, opensStatement } from '../parser/statements.js';

type Token = LexerResult['tokens'][number];

/** A block that is open where the text ends. */
export interface OpenBlock {
  /** Offset of the first word of what opens it. */
  readonly start: number;
  /** The words before its brace. */
  readonly head: readonly string[];
}

/** What of a text decides what may follow at its end. What is wrong elsewhere is left aside. */
export interface Opened {
  /** Outermost first. */
  readonly blocks: readonly OpenBlock[];
  /** The words written in the innermost block since its last line that opens a statement. */
  readonly begun: readonly string[];
  /** Offset of the first of them. */
  readonly start: number;
  /** The heads of the open blocks and what is begun, for reading them by themselves: no longer than they are. */
  readonly text: string;
  /** How much of its end is what is begun. */
  readonly last: number;
}

/** The same with nothing begun: what may follow where a new statement is. */
export function anew(opened: Opened, offset: number): Opened {
  return { ...opened, begun: [], start: offset, text: opened.text.slice(0, opened.text.length - opened.last) };
}

/**
 * @param tokens those of the text, as the lexer has them
 * @param base offset of the text in its file
 */
export function openedIn(text: string, tokens: readonly Token[], base = 0): Opened {
  const blocks: { readonly from: number; readonly brace: number }[] = [];
  let from = 0;
  tokens.forEach((token, index) => {
    if (token.image === '{') {
      blocks.push({ from, brace: index });
      from = index + 1;
    } else if (token.image === '}') {
      blocks.pop();
      from = index + 1;
    } else if (opensLine(tokens, index)) from = index;
  });
  const offset = (index: number) => tokens[index]?.startOffset ?? text.length;
  const images = (start: number, end?: number) => tokens.slice(start, end).map(({ image }) => image);
  return {
    blocks: blocks.map((block) => ({ start: base + offset(block.from), head: images(block.from, block.brace) })),
    begun: images(from),
    start: base + offset(from),
    text: [
      ...blocks.map((block) => text.slice(offset(block.from), offset(block.brace) + 1)),
      text.slice(offset(from)),
    ].join('\n'),
    last: text.length - offset(from),
  };
}

function opensLine(tokens: readonly Token[], index: number): boolean {
  const [token, next] = [tokens[index], tokens[index + 1]];
  if (token === undefined || token.startLine === tokens[index - 1]?.endLine) return false;
  // The last word has nothing behind it yet, and a line of a job begins with a number.
  if (next === undefined || (/^\d/.test(token.image) && next.image === 'of')) return true;
  return opensStatement(tokens, index) || opensPlacing(tokens, index);
}

/** `14 in`, which may become `14 in face`, with the word set apart from the number; undefined for any other end. */
export function unitSetApart(text: string): string | undefined {
  return /\d[ \t]+in\s+$/.test(text) ? text.replace(/[ \t]+in\s+$/, '\nin ') : undefined;
}
