import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { planeName } from '../sizes/planes.js';
import { axisOf, axisOfDimension, dimensionOf, highSide, lowSide } from '../spec/sides.js';
import type { Fact, PartId, Statement } from '../spec/spec.js';
import type { Check, CheckContext, Found } from './check.js';
import { partNames } from './support/names.js';

/** Evenly spaced parts leave no room between them, or a clear opening is written as nothing or less. */
export const openingsNegative: Check = {
  code: 'openings-negative',
  severity: 'error',
  *run(context) {
    for (const statement of context.spec.statements) {
      if (statement.kind === 'dimension' && statement.form.kind === 'between' && statement.length.value.sign() <= 0) {
        const { low, high } = statement.form;
        const axis = axisOfDimension(statement.dimension);
        yield {
          message: say`the clear ${statement.dimension} between ${low} and ${high} is ${statement.length.value}, which leaves no opening`,
          cure: say`Write the clear ${statement.dimension}, more than 0, or, if they touch, "${high}.${lowSide(axis)} against ${low}.${highSide(axis)}".`,
          source: statement.length.source,
          related: [],
          about: { parts: [low, high], statement: statement.id },
        };
      }
      const facts = statement.kind === 'joint' ? statement.facts : statement.kind === 'placing' ? [statement.fact] : [];
      const parts =
        statement.kind === 'joint' ? statement.entering : statement.kind === 'placing' ? statement.parts : [];
      for (const fact of facts) if (fact.kind === 'openings') yield* tooMany(context, statement, fact, parts);
    }
  },
};

function* tooMany(
  context: CheckContext,
  statement: Statement,
  fact: Extract<Fact, { kind: 'openings' }>,
  parts: readonly PartId[],
): Generator<Found> {
  const { planes } = context.solved.system;
  const axis = axisOf(fact.low.plane);
  const difference = (high: number | undefined, low: number | undefined): Rational | undefined => {
    if (high === undefined || low === undefined) return undefined;
    const { value, status } = context.solved.solution.difference(high, low);
    return status === 'determined' ? value : undefined;
  };
  const space = difference(planes.of(fact.high), planes.of(fact.low));
  const taken = parts.map((part) => difference(planes.side(part, highSide(axis)), planes.side(part, lowSide(axis))));
  if (!space || taken.some((extent) => extent === undefined)) return;
  const sum = Rational.sum(taken as Rational[]);
  const count = parts.length + 1;
  const opening = space.sub(sum).div(Rational.of(count));
  const step = fact.step && fact.step.value.sign() > 0 ? fact.step.value : undefined;
  if (step ? opening.ge(step) : opening.sign() > 0) return;
  const least = sum.add((step ?? Rational.ZERO).mul(Rational.of(count)));
  const left =
    opening.sign() > 0 && step
      ? say`${opening} each, less than the step of ${step} they are rounded to`
      : say`${opening} each`;
  yield {
    message: say`the space between ${planeName(fact.low)} and ${planeName(fact.high)} is ${space}, of which ${partNames(context, parts)} takes ${sum}: ${count} openings of ${left}`,
    cure: say`Make the ${dimensionOf(axis)} between the two ${step ? 'at least' : 'more than'} ${least}, or take parts out.`,
    source: fact.source,
    related: [{ message: say`the openings are asked for here`, source: statement.source }],
    about: { parts, statement: statement.id },
    data: { space: space.toString(), taken: sum.toString() },
  };
}
