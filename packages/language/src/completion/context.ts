import type { LexerResult } from 'langium';
import { opensPlacing, opensStatement } from '../parser/statements.js';

type Token = LexerResult['tokens'][number];

/** A block that is open where the text ends: from its first word to the end of its brace. */
interface Block {
  readonly start: number;
  readonly end: number;
}

/**
 * What of a text decides what may follow at its end: the heads of the blocks that are open there, and the statement
 * begun since. What is wrong elsewhere is left aside, and a long file costs no more than a short one.
 * @param tokens those of the text, as the lexer has them
 */
export function openStatement(text: string, tokens: readonly Token[]): string {
  const blocks: Block[] = [];
  let start = 0;
  tokens.forEach((token, index) => {
    const end = token.startOffset + token.image.length;
    if (token.image === '{') {
      blocks.push({ start, end });
      start = end;
    } else if (token.image === '}') {
      blocks.pop();
      start = end;
    } else if (opensLine(tokens, index)) start = token.startOffset;
  });
  return [...blocks.map((block) => text.slice(block.start, block.end)), text.slice(start)].join('\n');
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
