import { type Finding, type Source, say } from '@dryfit/engine';
import type { LangiumDocument } from 'langium';
import { syntax } from '../checks/syntax.js';

type ParserError = LangiumDocument['parseResult']['parserErrors'][number];

const CURE = 'Mend this statement; the others are read as they stand.';

/** What of a text could not be read, in the order of the text, each place once. */
export function syntaxFindings(document: LangiumDocument): readonly Finding[] {
  const uri = document.uri.toString();
  const { lexerErrors, parserErrors } = document.parseResult;
  const found = new Map<number, Finding>();
  const add = (source: Source, message: string) => {
    if (!found.has(source.start))
      found.set(source.start, syntax({ source, message: say`${message}`, cure: say`${CURE}` }));
  };
  for (const { offset, length, message } of lexerErrors) {
    add({ uri, start: offset, end: offset + Math.max(1, length) }, message);
  }
  for (const error of parserErrors) add({ uri, ...placeOf(error, document) }, error.message);
  return [...found.values()].sort((a, b) => a.source.start - b.source.start);
}

/** What is missing at the end of a line is shown there, and not at the word that begins the next one. */
function placeOf(error: ParserError, document: LangiumDocument): { readonly start: number; readonly end: number } {
  const { token } = error;
  const previous = 'previousToken' in error ? (error.previousToken as typeof token | undefined) : undefined;
  const size = document.textDocument.getText().length;
  const before = previous && isPlaced(previous) ? previous : undefined;
  if (isPlaced(token) && (before === undefined || before.endLine === token.startLine)) return span(token);
  if (before !== undefined) return span(before);
  return isPlaced(token) ? span(token) : { start: size, end: size };
}

type Token = ParserError['token'];

const isPlaced = (token: Token): boolean =>
  Number.isFinite(token.startOffset) && token.startOffset >= 0 && token.image !== '';
const span = (token: Token) => ({ start: token.startOffset, end: token.startOffset + token.image.length });
