import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { axisOf, dimensionOf, isFace, opposite, type Side } from '../spec/sides.js';
import type { CantStatement, PartId, PartSpec } from '../spec/spec.js';
import { cantOf, cutsOutline, legFrom } from '../turned/cant.js';
import type { Check, CheckContext, Found } from './check.js';

/** A corner is to be cut off that cannot be: more than there is, nothing, a second one, or not at the edges of its part. */
export const cantTooLarge: Check = {
  code: 'cant-too-large',
  severity: 'error',
  *run(context) {
    for (const statement of context.spec.statements) {
      if (statement.kind !== 'cant') continue;
      for (const id of statement.parts) {
        const part = context.solved.system.planes.part(id);
        const first = cantOf(context.spec, id);
        if (!part) continue;
        if (part.on) yield onTurned(statement, part);
        else if (first && first !== statement) yield second(statement, first, id);
        else if (!cutsOutline(statement, part)) yield notAnEdge(statement, part);
        else for (const side of statement.corner) yield* leg(context, statement, part, side);
      }
    }
  },
};

const about = (statement: CantStatement, part: PartId) => ({ parts: [part], statement: statement.id });

const onTurned = (statement: CantStatement, part: PartSpec): Found => ({
  message: say`${part.id} stands along a cant itself, and a corner cut off a turned part is not worked out`,
  cure: say`Take the cant of ${part.id} out.`,
  source: statement.source,
  related: [{ message: say`${part.id} is declared here`, source: part.source }],
  about: about(statement, part.id),
});

const second = (statement: CantStatement, first: CantStatement, part: PartId): Found => ({
  message: say`${part} has a cant at ${first.corner.join(' ')} already, and ${part}.cant can mean one of them only`,
  cure: say`Take one of the two out; the corner can be cut off at a square with a notch.`,
  source: statement.source,
  related: [{ message: say`the first cant of ${part}`, source: first.source }],
  about: about(statement, part),
});

function notAnEdge(statement: CantStatement, part: PartSpec): Found {
  const face = statement.corner.find((side) => isFace(side, part.attitude)) ?? statement.corner[0];
  return {
    message: say`the ${face} of ${part.id}, which is ${part.attitude}, is a face: a cant there would bevel an edge and not cut a corner off`,
    cure: say`Name two edges that meet in a corner of ${part.id}, as in ${corners(part)}.`,
    source: statement.source,
    related: [{ message: say`${part.id} is declared here`, source: part.source }],
    about: about(statement, part.id),
  };
}

const corners = ({ attitude }: PartSpec): string =>
  attitude === 'level' ? 'front right' : attitude === 'upright' ? 'front top' : 'right top';

/** On the edge beyond the corner something must be left; the leg inward from `side` runs along the other edge. */
function* leg(context: CheckContext, statement: CantStatement, part: PartSpec, side: Side): Generator<Found> {
  const written = legFrom(statement, side);
  const extent = context.solved.extent(part.id, axisOf(side));
  // A part that comes out the wrong way round has a finding of its own.
  if (!written || (extent && extent.sign() <= 0)) return;
  const { value } = written;
  const dimension = dimensionOf(axisOf(side));
  if (value.sign() > 0 && (!extent || value.lt(extent))) return;
  const other = statement.corner.find((one) => one !== side) ?? side;
  yield {
    message:
      value.sign() <= 0
        ? say`the cant takes ${value} off the ${dimension} of ${part.id}: that cuts no corner off`
        : say`the cant takes ${value} off the ${dimension} of ${part.id}, which is ${extent ?? value}: nothing is left of its ${other} edge up to the ${opposite(side)}`,
    cure:
      value.sign() <= 0
        ? say`Write how much of the ${dimension} is gone, more than 0.`
        : say`Write less than ${extent ?? value}, or make ${part.id} larger.`,
    source: written.source,
    related: [
      { message: say`so much is taken off`, source: written.source },
      { message: say`${part.id} is declared here`, source: part.source },
    ],
    about: about(statement, part.id),
    data: extent ? { from: value.toString(), to: extent.div(Rational.TWO).floor().toString() } : {},
  };
}
