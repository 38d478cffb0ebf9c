import { isBrace, isComment, type Placed } from './units.js';

/** Blanks between two pieces on one line. */
export function gapBetween(before: Placed, piece: Placed, trailing: boolean): number {
  if (isComment(piece)) return trailing || piece.kind === 'line comment' ? 2 : 1;
  if (isBrace(before, '{')) return isBrace(piece, '}') ? 0 : 1;
  if (isComment(before)) return 1;
  if (piece.mark?.opens) return 2;
  return tight(before, piece) ? 0 : 1;
}

function tight(before: Placed, piece: Placed): boolean {
  const [left, right] = [before.mark?.rule, piece.mark?.rule];
  if (piece.text === ',' || piece.text === '.' || piece.text === ')') return true;
  if (before.text === '.' || before.text === '(') return true;
  if (piece.text === '(') return right === 'JobLine' || left === 'Negative';
  if (before.text === '-' && left === 'Negative') return true;
  return left === 'CheckName' && right === 'CheckName';
}

/** A piece as it is printed: blanks inside a number are single, and none stand behind a comment. */
export function printed(piece: Placed, lineEnd: string): string {
  switch (piece.kind) {
    case 'token':
      return numberText(piece.text);
    case 'line comment':
      return piece.text.trimEnd();
    default:
      return piece.text.split(/\r\n|\r|\n/).join(lineEnd);
  }
}

/** `23   1/4 in` as `23 1/4 in`; any other token as it is. */
export function numberText(text: string): string {
  return /^\d/.test(text) ? text.replace(/[ \t]+/g, ' ') : text;
}
