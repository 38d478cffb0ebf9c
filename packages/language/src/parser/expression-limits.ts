import type { LexerResult } from 'langium';
import { lexingError } from './lexing-error.js';

type Token = LexerResult['tokens'][number];

/** How deep parentheses stand in one another, and how many minus signs in a row. */
const MOST_DEEP = 30;
/** How many signs of arithmetic one expression has. */
const MOST_SIGNS = 200;

const SIGNS = new Set(['+', '-', '*', '/']);

/**
 * Leaves out what makes an expression deeper or longer than anybody writes, and says so once where it begins. The
 * parser calls itself for each parenthesis and minus sign, and whoever reckons with its tree for each sum: text that
 * came about by accident would otherwise run them out of stack, and with it every file that is read together.
 */
export function limitExpressions(tokens: Token[]): {
  readonly tokens: Token[];
  readonly errors: LexerResult['errors'];
} {
  const errors: LexerResult['errors'] = [];
  const kept: Token[] = [];
  let before = '';
  let open = 0;
  let minuses = 0;
  let signs = 0;
  /** How many parentheses were open where an expression became too long; undefined while none is. */
  let openAtEnd: number | undefined;
  for (const token of tokens) {
    const { image } = token;
    if (ends(image, before)) {
      signs = 0;
      openAtEnd = undefined;
    }
    if (image === '{' || image === '}') open = 0;
    if (image === '(') open++;
    minuses = image === '-' ? minuses + 1 : 0;
    if (SIGNS.has(image) && minuses <= 1 && ++signs === MOST_SIGNS + 1) {
      openAtEnd = open;
      errors.push(lexingError(token, `an expression has at most ${MOST_SIGNS} signs: make a part of it a parameter`));
    }
    if (image === '(' && open === MOST_DEEP + 1)
      errors.push(lexingError(token, `parentheses stand at most ${MOST_DEEP} deep in one another: write fewer`));
    if (minuses === MOST_DEEP + 1)
      errors.push(
        lexingError(token, `at most ${MOST_DEEP} minus signs stand in a row: take out those that cancel out`),
      );
    const tooDeep = (image === '(' || image === ')') && open > MOST_DEEP;
    const closesWhatIsKept = image === ')' && open <= (openAtEnd ?? 0);
    const tooLong = openAtEnd !== undefined && !closesWhatIsKept;
    if (!tooDeep && !tooLong && minuses <= MOST_DEEP) kept.push(token);
    if (image === ')' && open > 0) open--;
    if (openAtEnd !== undefined) openAtEnd = Math.min(openAtEnd, open);
    before = image;
  }
  return errors.length === 0 ? { tokens, errors } : { tokens: kept, errors };
}

/** True for what is no part of the expression that may stand before it. */
function ends(image: string, before: string): boolean {
  if (SIGNS.has(image) || image === '(' || image === ')') return false;
  return image === '{' || image === '}' || !(SIGNS.has(before) || before === '(');
}
