/** What this needs to know of a lexed token. */
export interface Lexed {
  readonly image: string;
  readonly startLine?: number | undefined;
  readonly endLine?: number | undefined;
}

/** True where a statement may begin: first on its line, or right behind a brace. */
export function atStatement(token: Lexed, previous: Lexed | undefined): boolean {
  if (previous === undefined || previous.image === '') return true;
  if (previous.image === '{' || previous.image === '}') return true;
  return token.startLine !== undefined && previous.endLine !== undefined && token.startLine > previous.endLine;
}

/** Tokens that no statement has second, so that a word before them is a name however it stands. */
const AFTER_A_NAME = new Set(
  [
    [...',:{}.=)+*/±', '+/-', 'x', 'plus', 'minus'],
    ['and', 'between', 'to', 'of', 'with', 'by', 'over', 'at', 'from', 'centred', 'openings'],
  ].flat(),
);

/** True for a word that opens a statement here and so cannot be the name that a statement before it lacks. */
export function opensStatement(tokens: readonly Lexed[], index: number): boolean {
  const token = tokens[index];
  const next = tokens[index + 1];
  if (token === undefined || next === undefined || !atStatement(token, tokens[index - 1])) return false;
  if (AFTER_A_NAME.has(next.image)) return false;
  // `top 2.bottom flush with …` starts with the part `top 2`.
  return !(/^\d+$/.test(next.image) && tokens[index + 2]?.image === '.');
}

/** True for the start of a fact about a part outside any joint, which begins with a name: `lh.rear flush with …`. */
export function opensPlacing(tokens: readonly Lexed[], index: number): boolean {
  const token = tokens[index];
  if (token === undefined || !/^[\p{L}_]/u.test(token.image) || !atStatement(token, tokens[index - 1])) return false;
  const numbered = /^\d+$/.test(tokens[index + 1]?.image ?? '');
  const next = tokens[index + (numbered ? 2 : 1)]?.image;
  return next === '.' || next === 'centred' || next === 'openings';
}
