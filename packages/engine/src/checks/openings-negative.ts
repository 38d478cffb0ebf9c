import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { planeName } from '../sizes/planes.js';
import { dimensionOf, highSide, lowSide } from '../spec/sides.js';
import type { Check, CheckContext, Found } from './check.js';
import { partNames } from './support/names.js';
import { type Closed, type Crowded, closed, crowded } from './support/openings.js';

/** Evenly spaced parts leave no room between them, or a clear opening is written as nothing or less. */
export const openingsNegative: Check = {
  code: 'openings-negative',
  severity: 'error',
  *run(context) {
    yield* closed(context).map(nothingBetween);
    yield* crowded(context).map((spacing) => tooMany(context, spacing));
  },
};

const nothingBetween = ({ statement, low, high, axis }: Closed): Found => ({
  message: say`the clear ${statement.dimension} between ${low} and ${high} is ${statement.length.value}, which leaves no opening`,
  cure: say`Write the clear ${statement.dimension}, more than 0, or, if they touch, "${high}.${lowSide(axis)} against ${low}.${highSide(axis)}".`,
  source: statement.length.source,
  related: [],
  about: { parts: [low, high], statement: statement.id },
});

function tooMany(context: CheckContext, spacing: Crowded): Found {
  const { statement, fact, parts, axis, space, taken, opening, step } = spacing;
  const count = parts.length + 1;
  const least = taken.add((step ?? Rational.ZERO).mul(Rational.of(count)));
  const left =
    opening.sign() > 0 && step
      ? say`${opening} each, less than the step of ${step} they are rounded to`
      : say`${opening} each`;
  return {
    message: say`the space between ${planeName(fact.low)} and ${planeName(fact.high)} is ${space}, of which ${partNames(context, parts)} ${parts.length === 1 ? 'takes' : 'take'} ${taken}: ${count} openings of ${left}`,
    cure: say`Make the ${dimensionOf(axis)} between the two ${step ? 'at least' : 'more than'} ${least}, or take parts out.`,
    source: fact.source,
    related: [{ message: say`the openings are asked for here`, source: statement.source }],
    about: { parts, statement: statement.id },
    data: { space: space.toString(), taken: taken.toString() },
  };
}
