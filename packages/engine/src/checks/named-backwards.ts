import { say, type Text } from '../fit/text.js';
import type { Axis } from '../spec/sides.js';
import type { Check, CheckContext } from './check.js';
import { type Backwards, backwards, ordersOf } from './support/backwards.js';
import { extentWord, partNames } from './support/names.js';

/** Two parts are named in the wrong order: left before right, front before rear, bottom before top. */
export const namedBackwards: Check = {
  code: 'named-backwards',
  severity: 'error',
  *run(context) {
    for (const found of backwards(context)) {
      const { statement, low, high, axis } = found;
      const word = statement.kind === 'dimension' && statement.form.kind === 'over' ? 'over' : 'between';
      yield {
        message: say`"${word} ${low} and ${high}" names the two the wrong way round, ${FIRST[axis]} comes first: ${consequence(context, found)}`,
        cure: say`Write "${word} ${high} and ${low}".`,
        source: statement.source,
        related: ordersOf(context.spec)
          .filter((other) => other.low === high && other.high === low && other.axis === axis)
          .slice(0, 3)
          .map((other) => ({ message: say`here ${high} comes before ${low}`, source: other.statement.source })),
        about: { parts: [low, high, ...found.parts], statement: statement.id },
        data: { low, high },
      };
    }
  },
};

const FIRST: Record<Axis, string> = { x: 'the left one', y: 'the front one', z: 'the lower one' };

function consequence(context: CheckContext, { parts, axis, conflict }: Backwards): Text {
  const first = parts[0];
  const extent = first === undefined ? undefined : context.solved.extent(first, axis);
  if (extent) return say`the ${extentWord(axis)} of ${partNames(context, parts)} comes out at ${extent}`;
  return conflict ? say`the sizes miss each other by ${conflict.miss.abs()}` : say`no size is left`;
}
