import type { Slot } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { reaches } from '../geometry/mouth.js';
import { boundedOf, subBounded } from '../number/bounded.js';
import type { Rational } from '../number/rational.js';
import { opposite, type Side } from '../spec/sides.js';
import type { Check, CheckContext, Found } from './check.js';
import { type Milled, milledHalves, openingWord } from './support/halves.js';

/** The end of a slot lies nearer to an edge of its part, along the run, than the shop's limit. */
export const slotNearEdge: Check = {
  code: 'slot-near-edge',
  severity: 'error',
  *run(context) {
    for (const milled of milledHalves(context)) {
      for (const slot of milled.half.slots) yield* edgesOf(context, milled, slot);
    }
  },
};

function* edgesOf(context: CheckContext, milled: Milled, slot: Slot): Generator<Found> {
  const { joint, half, part, connector, machine } = milled;
  const extent = joint.run && part.extent[joint.run];
  if (!extent) return;
  const limit = context.spec.shop.limits.slotToEdge;
  const rooms: readonly (readonly [Side, Rational])[] = [
    [half.datum, slot.fromDatum],
    [opposite(half.datum), extent.sub(slot.fromDatum)],
  ];
  for (const [edge, room] of rooms) {
    if (reaches(connector, machine, half.depth, room, limit)) continue;
    const length = slot.length;
    const left = subBounded(boundedOf(room), { value: length.value / 2, error: length.error / 2 });
    const word = openingWord(machine);
    const what =
      left.value < 0
        ? say`breaks out of the ${edge} edge by ${{ value: -left.value, error: left.error }}`
        : say`leaves ${left} to the ${edge} edge`;
    const least = { value: limit.toNumber() + length.value / 2, error: length.error };
    yield {
      message: say`the ${word} ${slot.fromDatum} from the ${half.datum} of ${half.part} is ${length} long and ${what}; the least is ${limit}`,
      cure: say`Move the line ${slot.fromZero} so that its middle is at least ${least} from the ${edge} edge of ${half.part}, or leave it out here: leave out ${slot.fromZero}.`,
      source: joint.source,
      related: [{ message: say`${half.part} is ${extent} along the run`, source: part.source }],
      about: { parts: [half.part], joint: joint.id, slots: [slot.id], statement: joint.statement },
      data: { line: slot.fromZero.toString(), edge },
    };
  }
}
