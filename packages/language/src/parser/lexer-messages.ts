import { DefaultLexerErrorMessageProvider } from 'langium';

/** Says which character the language does not have, and what to write for it. */
export class JoineryLexerErrorMessageProvider extends DefaultLexerErrorMessageProvider {
  override buildUnexpectedCharactersMessage(text: string, start: number, length: number): string {
    const characters = text.slice(start, start + length);
    const hint = HINTS.find(([pattern]) => pattern.test(characters))?.[1];
    return `\`${characters}\` is not part of the language${hint === undefined ? '' : `: ${hint}`}`;
  }
}

const HINTS: readonly (readonly [RegExp, string])[] = [
  [/^['’‘]/, 'feet are not read; write inches as 3/4" or 23 1/4 in, and texts in double quotes'],
  [/^["“”]/, 'a text begins and ends with " on one line'],
  [/^[×✕]/, 'write x between the two sizes'],
  [/^[½¼¾⅛⅜⅝⅞]/, 'write the fraction with a slash, as in 3/4'],
  [/^[–—−]/, 'write a plain hyphen for minus'],
  [/^#/, 'comments begin with //'],
  [/^;/, 'statements need no mark at their end'],
];
