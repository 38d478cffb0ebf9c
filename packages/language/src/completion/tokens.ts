import type { LexerResult } from 'langium';
import { opensStatement } from '../parser/statements.js';

type Token = LexerResult['tokens'][number];

/**
 * Tokens in front of the cursor, from one of them on, for finding out what may follow: each word is looked up as the
 * keyword it is and, by its image, as a name. One that opens a statement, or that nothing is called, is the keyword
 * only, so that nothing is offered that would follow a part of that name.
 */
export function asTyped(tokens: readonly Token[], from: number, isName: (word: string) => boolean): Token[] {
  const withEnd = [...tokens, END];
  return tokens.slice(from).map((token, index) => {
    const [name] = token.tokenType.CATEGORIES ?? [];
    const tokenType = name ?? token.tokenType;
    const keyword = tokenType.name === token.image;
    const isWordOnly = keyword && (opensStatement(withEnd, from + index) || !isName(token.image));
    return { ...token, tokenType, image: isWordOnly ? '' : token.image };
  });
}

/** What stands behind the last token is not known, and so nothing that would make a name of it. */
const END = { image: ' ' };
