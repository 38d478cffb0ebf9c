import type { LexerResult } from 'langium';

/** What is wrong with a token, told at the whole of it. */
export function lexingError(
  { startOffset, startLine, startColumn, image }: LexerResult['tokens'][number],
  message: string,
): LexerResult['errors'][number] {
  return { message, offset: startOffset, line: startLine, column: startColumn, length: image.length };
}
