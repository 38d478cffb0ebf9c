import { formatInch, formatMm, type Units } from '@dryfit/engine';
import type { AstNode } from 'langium';
import { isBinary, isParameter, isPartLine, type Literal } from '../generated/ast.js';
import { MILLIMETRES, readNumber } from '../parser/numbers.js';
import { signedMm } from './lengths.js';

/** A number of the text, unless it counts or multiplies something. */
export function literalHover(literal: Literal, units: Units): string | undefined {
  if (literal.text === undefined) return undefined;
  return isLength(literal) ? numberHover(literal.text, units) : undefined;
}

function isLength(literal: Literal): boolean {
  if (/[^\d]$/.test(literal.text)) return true;
  for (let node: AstNode | undefined = literal; node !== undefined; node = node.$container) {
    if (isBinary(node) && (node.operator === '*' || node.operator === '/')) return false;
    if (isPartLine(node) || (isParameter(node) && node.count)) return false;
  }
  return true;
}

/**
 * A length in the other system of units, with what rounding took away.
 * @param units those of the file, for numbers that say none
 */
function numberHover(text: string, units: Units): string | undefined {
  const { value, unit = units } = readNumber(text);
  if (value === undefined) return undefined;
  const length = value.mul(MILLIMETRES[unit]);
  const written = `${text.replace(/\s+/g, ' ')}${/\d$/.test(text) ? ` ${unit}` : ''}`;
  if (unit === 'in') {
    const { text: mm, lost } = formatMm(length, { decimals: 4 });
    return `${written} = **${mm} mm**${lost.isZero() ? ' exactly' : `, rounded: ${signedMm(lost)} lost`}`;
  }
  const { text: inches, lost } = formatInch(length, { denominator: 64 });
  return `${written} = **${inches}"**${lost.isZero() ? ' exactly' : ` to the nearest 1/64: ${signedMm(lost)} lost`}`;
}
