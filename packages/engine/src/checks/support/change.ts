import { Rational } from '../../number/rational.js';
import type { CheckContext } from '../check.js';
import { type WrittenNumber, writtenNumber } from './written.js';

/** A number in the text, and by how much to change it. */
export interface Change {
  readonly number: WrittenNumber;
  readonly by: Rational;
}

/** The first of `changesThatMove`. */
export const changeThatMoves = (
  context: CheckContext,
  high: number | undefined,
  low: number | undefined,
  by: Rational,
): Change | undefined => changesThatMove(context, high, low, by)[0];

/**
 * The written numbers that move the distance from plane `low` to plane `high` one for one, and the change of each
 * that moves the distance by `by`. Numbers that place parts come before sizes, these before the
 * measures of a cut, and none may come out at zero or less.
 */
export function changesThatMove(
  context: Pick<CheckContext, 'solved' | 'statement'>,
  high: number | undefined,
  low: number | undefined,
  by: Rational,
): readonly Change[] {
  if (high === undefined || low === undefined || high === low) return [];
  const { equations } = context.solved.system;
  const reasons = context.solved.solution.explain([
    { unknown: high, coefficient: Rational.ONE },
    { unknown: low, coefficient: Rational.of(-1) },
  ]);
  const found = reasons.flatMap(({ equation, multiplier }): Change[] => {
    const behind = equations[equation];
    const number = behind && writtenNumber(context, behind);
    const rate = number && multiplier.mul(Rational.of(number.sign));
    if (!number || !rate?.abs().equals(Rational.ONE)) return [];
    const change = { number, by: by.mul(rate) };
    return number.written.value.add(change.by).sign() > 0 ? [change] : [];
  });
  return [...found].sort((a, b) => reluctance(a.number) - reluctance(b.number));
}

/** Parts are moved before they are resized, and a groove is as wide and deep as its cutter until nothing else helps. */
function reluctance({ statement, written }: WrittenNumber): number {
  if (statement.kind === 'dimension') return 1;
  if (statement.kind !== 'joint') return 0;
  const { width, depth, lap, clearance } = statement;
  return [width, depth, lap, clearance].some((cut) => cut?.source === written.source) ? 2 : 0;
}

/**
 * What a quick fix needs to write the change: the number and what it should be. Where it stands is the finding's
 * first related place.
 */
export const changeData = ({ number, by }: Change): Readonly<Record<string, string>> => ({
  statement: number.statement.id,
  from: number.written.value.toString(),
  to: number.written.value.add(by).toString(),
});
