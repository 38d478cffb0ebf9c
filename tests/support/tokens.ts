/** The words, numbers, strings and signs of a text in order, with what stands between them. */
export interface Token {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

const TOKEN =
  /\/\/[^\n]*|\/\*[\s\S]*?\*\/|"[^"\n]*"|\d+(?:\.\d+)?(?:[ \t]+\d+\/\d+|\/\d+)?(?:[ \t]*(?:mm|in)\b|")?|[\p{L}_][\p{L}\d_]*|[^\s]/gu;

/** Cuts a text into tokens; comments are none. */
export function tokensOf(text: string): Token[] {
  return [...text.matchAll(TOKEN)]
    .filter((match) => !match[0].startsWith('//') && !match[0].startsWith('/*'))
    .map((match) => ({ text: match[0], start: match.index, end: match.index + match[0].length }));
}

/** The text with some of its tokens changed; an undefined change takes the token away. */
export function withTokens(text: string, changes: ReadonlyMap<number, string | undefined>): string {
  let result = '';
  let at = 0;
  tokensOf(text).forEach((token, i) => {
    if (!changes.has(i)) return;
    result += text.slice(at, token.start) + (changes.get(i) ?? '');
    at = token.end;
  });
  return result + text.slice(at);
}
