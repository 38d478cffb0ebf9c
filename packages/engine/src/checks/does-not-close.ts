import { list, say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import type { Conflict, Equation } from '../solve/index.js';
import type { Check, CheckContext } from './check.js';
import { explainedConflicts } from './support/backwards.js';
import { changeData } from './support/change.js';
import { sourceOf } from './support/sources.js';
import { rewrite, type WrittenNumber, writtenNumber } from './support/written.js';

/** Statements that cannot all hold: going round them the sizes do not come back to where they began. */
export const doesNotClose: Check = {
  code: 'does-not-close',
  severity: 'error',
  *run(context) {
    const explained = explainedConflicts(context);
    for (const conflict of context.solved.solution.conflicts) {
      if (explained.has(conflict)) continue;
      const { statements, blame } = conflict;
      // A sheet's thickness is a fact, not a statement that could be taken away.
      const count = new Set(equationsOf(context, conflict).flatMap((it) => (it.written ? it.statement : []))).size;

      const texts = textsBy(context, conflict);
      const number = numberOf(context, conflict);
      yield {
        message: say`${count < 2 ? 'this statement contradicts itself' : `${count} statements do not agree`}: ${missOf(context, conflict, number)}`,
        cure: cureFor(conflict, count, number),
        source: sourceOf(context, blame),
        related: [
          ...(number
            ? [{ message: say`this number is off by ${conflict.miss.abs()}`, source: number.written.source }]
            : []),
          ...statements
            .filter((statement) => statement !== blame)
            .map((statement) => ({
              message: some(texts.get(statement) ?? [statement]),
              source: sourceOf(context, statement),
            })),
        ],
        about: { statement: blame },
        data: {
          statements,
          miss: conflict.miss.toString(),
          ...(number && changeData({ number, by: wanted(conflict, number).sub(number.written.value) })),
        },
      };
    }
  },
};

const equationsOf = (context: CheckContext, conflict: Conflict): readonly Equation[] =>
  conflict.equations.map((at) => context.solved.system.equations[at]).filter((equation) => equation !== undefined);

function textsBy(context: CheckContext, conflict: Conflict): ReadonlyMap<string, readonly string[]> {
  const texts = new Map<string, string[]>();
  for (const { statement, text } of equationsOf(context, conflict))
    texts.set(statement, [...(texts.get(statement) ?? []), text]);
  return texts;
}

const some = (texts: readonly string[]): Text => list([...new Set(texts)].slice(0, 3), '; ');

/** The number to change, when the blamed statement takes part with one equation that states one. */
function numberOf(context: CheckContext, conflict: Conflict): WrittenNumber | undefined {
  const own = equationsOf(context, conflict).filter(({ statement }) => statement === conflict.blame);
  return own.length === 1 && own[0] ? writtenNumber(context, own[0]) : undefined;
}

/** The number with which the blamed statement would agree with the others. */
const wanted = ({ miss }: Conflict, { written, sign }: WrittenNumber): Rational =>
  written.value.sub(miss.mul(Rational.of(sign)));

function missOf(context: CheckContext, conflict: Conflict, number: WrittenNumber | undefined): Text {
  const own = equationsOf(context, conflict).find(({ statement }) => statement === conflict.blame);
  const text = own?.text ?? conflict.blame;
  const miss = conflict.miss.abs();
  if (!number) return say`"${text}", but by the others the two are ${miss} apart from that`;
  const { written } = number;
  const left = wanted(conflict, number);
  return say`"${text}" asks for ${written.value}, the others leave ${left}: ${miss} too ${left.lt(written.value) ? 'much' : 'little'}`;
}

function cureFor(conflict: Conflict, count: number, number: WrittenNumber | undefined): Text {
  const away =
    count < 2
      ? 'Take away one of its facts'
      : count === 2
        ? 'Take away either of the 2'
        : `Take away any one of the ${count}`;
  const left = number && wanted(conflict, number);
  if (!number || !left || left.sign() <= 0) return say`${away}.`;
  return say`${away}, or ${rewrite(number, left.sub(number.written.value))}.`;
}
