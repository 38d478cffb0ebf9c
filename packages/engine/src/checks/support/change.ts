import { Rational } from '../../number/rational.js';
import type { CheckContext } from '../check.js';
import { type WrittenNumber, writtenNumber } from './written.js';

/** A number in the text, and by how much to change it. */
export interface Change {
  readonly number: WrittenNumber;
  readonly by: Rational;
}

/**
 * The written number that moves the distance from plane `low` to plane `high` one for one, and the change of it
 * that moves the distance by `by`. Numbers that place parts come before sizes, and none may come out at zero or less.
 */
export function changeThatMoves(
  context: CheckContext,
  high: number | undefined,
  low: number | undefined,
  by: Rational,
): Change | undefined {
  if (high === undefined || low === undefined || high === low) return undefined;
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
  return found.find(({ number }) => number.statement.kind !== 'dimension') ?? found[0];
}

/** Figures that a quick fix needs to write the change. */
export const changeData = ({ number, by }: Change): Readonly<Record<string, string>> => ({
  statement: number.statement.id,
  from: number.written.value.toString(),
  to: number.written.value.add(by).toString(),
});
