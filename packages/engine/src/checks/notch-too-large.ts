import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { axisOf, axisOfDimension, dimensionOf, opposite, type Side } from '../spec/sides.js';
import type { NotchStatement, PartId } from '../spec/spec.js';
import type { Check, CheckContext, Found } from './check.js';

/** A notch takes as much of a part as there is, or nothing. */
export const notchTooLarge: Check = {
  code: 'notch-too-large',
  severity: 'error',
  *run(context) {
    for (const statement of context.spec.statements) {
      if (statement.kind !== 'notch') continue;
      for (const part of statement.parts)
        for (const side of statement.corner) yield* leg(context, statement, part, side);
    }
  },
};

/** Beyond the wall inside `side` something of the part must be left. */
function* leg(context: CheckContext, statement: NotchStatement, id: PartId, side: Side): Generator<Found> {
  const axis = axisOf(side);
  const length = statement.legs.find(({ dimension }) => axisOfDimension(dimension) === axis)?.length;
  const extent = context.solved.extent(id, axis);
  const part = context.part(id);
  // A part that comes out the wrong way round has a finding of its own.
  if (!length || !part || (extent && extent.sign() <= 0)) return;
  const { value } = length;
  const takesNothing = value.sign() <= 0;
  if (!takesNothing && (!extent || value.lt(extent))) return;
  const dimension = dimensionOf(axis);
  const most = extent ?? value;
  yield {
    message: takesNothing
      ? say`the notch takes ${value} off the ${dimension} of ${id}: that cuts nothing away`
      : say`the notch takes ${value} off the ${dimension} of ${id}, which is ${most}: nothing is left between it and the ${opposite(side)}`,
    cure: takesNothing
      ? say`Write how much of the ${dimension} is gone, more than 0.`
      : say`Write less than ${most}, or make ${id} larger.`,
    source: length.source,
    related: [
      { message: say`so much is taken off`, source: length.source },
      { message: say`${id} is declared here`, source: part.source },
    ],
    about: { parts: [id], statement: statement.id },
    data: extent ? { from: value.toString(), to: extent.div(Rational.TWO).floor().toString() } : {},
  };
}
