import type { LexerResult } from 'langium';
import { lexingError } from './lexing-error.js';

type Token = LexerResult['tokens'][number];
type TokenType = Token['tokenType'];
type LexingError = LexerResult['errors'][number];

export interface Balanced {
  readonly tokens: Token[];
  readonly errors: readonly LexingError[];
}

/** Words whose statement has braces. */
const WITH_BRACES = new Set(
  [
    [
      'cabinet',
      'job',
      'material',
      'band',
      'machine',
      'connector',
      'pattern',
      'jig',
      'pose',
      'limits',
      'tolerances',
      'changes',
      'glue',
    ],
    ['butt', 'mitre', 'groove', 'rebate', 'house', 'rest', 'notch', 'cant'],
  ].flat(),
);

interface Block {
  readonly opener: Token;
  /** Column of the line that opened it. */
  readonly indent: number;
  /** Its content is not indented, so that columns tell nothing about it. */
  flat: boolean;
}

/**
 * Puts in the brace that is missing, or takes out the one too many, where the columns of the lines show it, so that
 * one lost brace does not cost the rest of the file. Text whose braces agree is left as it is.
 */
export function balanceBraces(
  tokens: Token[],
  types: { readonly open: TokenType | undefined; readonly close: TokenType | undefined },
): Balanced {
  const { open, close } = types;
  if (open === undefined || close === undefined || agree(tokens)) return { tokens, errors: [] };
  const out: Token[] = [];
  const errors: LexingError[] = [];
  const blocks: Block[] = [];
  const closeLast = (after: Token | undefined) => {
    const block = blocks.pop();
    if (block === undefined) return;
    errors.push(lexingError(block.opener, 'nothing closes this brace: write `}` where its lines end'));
    out.push(missing(close, '}', after ?? block.opener));
  };

  let previous: Token[] = [];
  for (const line of linesOf(tokens)) {
    const first = line[0] as Token;
    const indent = column(first);
    const closes = first.image === '}';
    let top = blocks.at(-1);
    if (top !== undefined && previous.at(-1) === top.opener && !closes && indent <= top.indent) top.flat = true;
    while (top !== undefined && !top.flat && (closes ? top.indent > indent : indent <= top.indent)) {
      closeLast(previous.at(-1));
      top = blocks.at(-1);
    }
    const above = previous[0];
    const last = previous.at(-1);
    if (above !== undefined && last !== undefined && WITH_BRACES.has(above.image) && indent > column(above)) {
      if (!previous.some(isBrace) && last.image !== ',') {
        errors.push(
          lexingError(last, `\`{\` is missing behind this: the lines below stand in the braces of \`${above.image}\``),
        );
        out.push(missing(open, '{', last));
        blocks.push({ opener: last, indent: column(above), flat: false });
      }
    }
    const openAt = missingOpener(line);
    line.forEach((token, index) => {
      if (index === openAt) {
        const before = line[index - 1] as Token;
        errors.push(lexingError(before, '`{` is missing behind this'));
        out.push(missing(open, '{', before));
        blocks.push({ opener: before, indent, flat: false });
      }
      if (token.image === '{') blocks.push({ opener: token, indent, flat: false });
      if (token.image === '}' && blocks.pop() === undefined)
        errors.push(lexingError(token, 'this brace closes nothing: take it out'));
      else out.push(token);
    });
    previous = line;
  }
  while (blocks.length > 0) closeLast(tokens.at(-1));
  return { tokens: out, errors };
}

/** True if every brace has its partner. */
function agree(tokens: readonly Token[]): boolean {
  const count = (brace: string) => tokens.reduce((sum, { image }) => sum + (image === brace ? 1 : 0), 0);
  return count('{') === count('}') && leastDepth(tokens) === 0;
}

/** 0, or below it where a brace closes what none has opened. */
function leastDepth(tokens: readonly Token[]): number {
  let depth = 0;
  let least = 0;
  for (const { image } of tokens) {
    if (image === '{') depth++;
    else if (image === '}') least = Math.min(least, --depth);
  }
  return least;
}

function linesOf(tokens: readonly Token[]): Token[][] {
  const lines: Token[][] = [];
  let end = -1;
  for (const token of tokens) {
    if (token.startLine !== end) lines.push([]);
    (lines.at(-1) as Token[]).push(token);
    end = token.endLine ?? -1;
  }
  return lines;
}

/** Where in a line that closes more than it opens its opening brace would stand; undefined if the line is in order. */
function missingOpener(line: readonly Token[]): number | undefined {
  const first = line[0]?.image ?? '';
  if (!WITH_BRACES.has(first)) return undefined;
  if (leastDepth(line) === 0) return undefined;
  const image = (index: number) => line[index]?.image;
  switch (first) {
    case 'pose':
    case 'limits':
    case 'tolerances':
    case 'changes':
      return 1;
    case 'connector':
      return image(3) === 'loose' ? 5 : 4;
    case 'notch':
    case 'cant':
      return line.findIndex((token) => token.image === 'at') + 3;
    case 'butt':
    case 'mitre':
    case 'groove':
    case 'rebate':
    case 'house':
    case 'rest':
      return afterHosts(line);
    default:
      return 2;
  }
}

/** Behind the last host named in the head of a joint. */
function afterHosts(line: readonly Token[]): number {
  let at = 1;
  for (;;) {
    at++;
    if (/^\d+$/.test(line[at]?.image ?? '')) at++;
    if (!['.', ',', 'and', 'between', 'to'].includes(line[at]?.image ?? '')) return at;
    at++;
  }
}

const isBrace = (token: Token): boolean => token.image === '{' || token.image === '}';
const column = (token: Token): number => token.startColumn ?? 0;

/** A token that is not in the text: it takes part in parsing, not in the tree. */
function missing(type: TokenType, image: string, after: Token): Token {
  return {
    ...after,
    image,
    tokenType: type,
    tokenTypeIdx: type.tokenTypeIdx as number,
    startOffset: after.endOffset ?? after.startOffset,
    startLine: after.endLine,
    isInsertedInRecovery: true,
  };
}
