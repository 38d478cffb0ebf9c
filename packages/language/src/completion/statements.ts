import { formatInch, Rational, type Units } from '@dryfit/engine';
import { wordLine } from '../hover/words.js';
import { unitOf } from '../interpret/units.js';
import { CABINET_STATEMENTS } from './cabinet-statements.js';
import { FILE_STATEMENTS } from './file-statements.js';
import { ORDER_STATEMENTS } from './job-orders.js';
import { type Offer, RANK } from './offer.js';
import type { Situation } from './situation.js';
import { hole, type Piece } from './snippet.js';
import type { Statements } from './statement.js';

const STATEMENTS: Statements = { ...CABINET_STATEMENTS, ...FILE_STATEMENTS, ...ORDER_STATEMENTS };

/** The statements that begin with a word, whole, with what there is to name in them. */
export function statementOffers(word: string, rule: string, situation: Situation): Offer[] {
  const key = `${rule} ${word}`;
  if (!Object.hasOwn(STATEMENTS, key)) return [];
  return (STATEMENTS[key] ?? []).map(([label, pieces]) => ({
    label,
    kind: 'statement',
    // Most statements of a cabinet are joints.
    rank: rule === 'Verb' ? RANK.also : RANK.statement,
    documentation: wordLine(word, rule),
    insert: pieces(situation).map((piece) => inUnits(piece, unitOf(situation.file))),
  }));
}

/** Examples of lengths are thought of in mm; in a file in inches they are sixteenths. */
function inUnits(piece: Piece, units: Units): Piece {
  if (units === 'mm' || typeof piece === 'string' || !('lengths' in piece)) return piece;
  const inches = (length: string) => formatInch(Rational.parse(length) ?? Rational.ONE, { denominator: 16 }).text;
  return hole(piece.hole.split(', ').map(inches).join(', '));
}
