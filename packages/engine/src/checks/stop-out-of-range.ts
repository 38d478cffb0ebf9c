import { list, say, type Text } from '../fit/text.js';
import { inRange } from '../joints/stops.js';
import { type Stop, stopsBy } from '../joints/uneven-ends.js';
import { opposite } from '../spec/sides.js';
import type { Jig } from '../spec/stock.js';
import type { Check, CheckContext } from './check.js';
import { fromOtherEnd, stopsOf, unevenEnds } from './support/stops.js';

/** A stop lies where the jig's stop cannot stand. */
export const stopOutOfRange: Check = {
  code: 'stop-out-of-range',
  severity: 'error',
  *run(context) {
    const jig = context.spec.shop.jig;
    if (!jig?.stop) return;
    const { least, most } = jig.stop;
    // A part whose two ends need different stops is told once, by the further one.
    const told = new Set(unevenEnds(context).flatMap(({ more, less }) => (inRange(jig, more.at) ? [] : [less.half])));
    const outside = stopsOf(context).filter(({ at, half }) => !inRange(jig, at) && !told.has(half));
    for (const group of stopsBy(outside, ({ joint, end, at }) => `${joint.statement}\n${end}\n${at}`)) {
      const [stop] = group;
      const { joint, half, end, at } = stop;
      const hosts = list(group.map((one) => one.half.part));
      const where =
        at.sign() < 0
          ? say`the stop would have to stand ${at.neg()} beyond the ${end} of ${hosts}`
          : say`the stop ${at} from the ${end} of ${hosts} is out of reach`;
      yield {
        message: say`${where}: the stop of ${jig.name} goes from ${least} to ${most}`,
        cure: cureFor(context, jig, stop),
        source: joint.source,
        related: [{ message: say`the stop of ${jig.name}`, source: jig.source }],
        about: {
          parts: group.map((one) => one.half.part),
          joint: joint.id,
          statement: joint.statement,
          slots: half.slots.map((slot) => slot.id),
        },
        data: { stop: at.toString(), end },
      };
    }
  },
};

function cureFor(context: CheckContext, jig: Jig, stop: Stop): Text {
  const other = fromOtherEnd(context, stop);
  const byHand = say`ark the slots out by hand and say so here: allow stop-out-of-range "…"`;
  // A reference is the whole statement's: what is in reach from here may be out of it from there.
  const together = stopsOf(context).filter(
    ({ joint, end }) => joint.statement === stop.joint.statement && end === stop.end,
  );
  const reached = together.every((one) => {
    const there = fromOtherEnd(context, one);
    return there !== undefined && inRange(jig, there);
  });
  if (!other || !reached) return say`M${byHand}.`;
  const side = opposite(stop.end);
  return say`Measure from the other face and end, where the stop is ${other}: reference ${side}; or m${byHand}.`;
}
