import type { Slot } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { reaches, surelyReaches } from '../geometry/mouth.js';
import { type Bounded, boundedOf, subBounded } from '../number/bounded.js';
import type { Rational } from '../number/rational.js';
import { opposite, type Side } from '../spec/sides.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, once } from './support/alike.js';
import { type Milled, milledHalves, openingWord } from './support/halves.js';
import { partNames } from './support/names.js';
import { roundedUp } from './support/round.js';
import { spreadTooLong } from './support/spread.js';

/** The end of a slot lies nearer to an edge of its part, along the run, than the shop's limit. */
export const slotNearEdge: Check = {
  code: 'slot-near-edge',
  severity: 'error',
  *run(context) {
    const near = [...milledHalves(context)].flatMap((milled) =>
      // A joint too short for its layout has a check of its own.
      spreadTooLong(context, milled.joint) ? [] : milled.half.slots.flatMap((slot) => nearEdges(context, milled, slot)),
    );
    const key = ({ milled: { joint }, slot, edge, room }: Near) => [
      joint.statement,
      slot.fromDatum,
      slot.length.value,
      edge,
      room,
    ];
    for (const group of alike(near, key)) yield finding(context, group);
  },
};

/** A slot, an edge it is too near to, and what lies between its middle and that edge. */
interface Near {
  readonly milled: Milled;
  readonly slot: Slot;
  readonly edge: Side;
  readonly room: Rational;
}

function nearEdges(context: CheckContext, milled: Milled, slot: Slot): readonly Near[] {
  const { joint, half, part, connector, machine } = milled;
  // Along a cant the turned part has the same ends, and is told.
  if (half.turn) return [];
  const extent = joint.run && part.extent[joint.run];
  if (!extent) return [];
  const limit = context.spec.shop.limits.slotToEdge;
  const [least, length, from] = [limit.toNumber(), extent.toNumber(), slot.fromDatum.toNumber()];
  if (surelyReaches(slot.length, Math.min(from, length - from), least)) return [];
  const near: Near[] = [];
  const look = (edge: Side, room: Rational): void => {
    if (!reaches(connector, machine, half.depth, room, limit)) near.push({ milled, slot, edge, room });
  };
  look(half.datum, slot.fromDatum);
  look(opposite(half.datum), extent.sub(slot.fromDatum));
  return near;
}

function finding(context: CheckContext, group: readonly [Near, ...Near[]]): Found {
  const [{ milled, slot, edge, room }] = group;
  const { joint, half, machine } = milled;
  const limit = context.spec.shop.limits.slotToEdge;
  const ids = once(group.map((near) => near.milled.part.id));
  const parts = partNames(context, ids);
  const halfLength: Bounded = { value: slot.length.value / 2, error: slot.length.error / 2 };
  const left = subBounded(boundedOf(room), halfLength);
  const what =
    left.value < 0
      ? say`breaks out of the ${edge} edge by ${{ value: -left.value, error: left.error }}`
      : say`leaves ${left} to the ${edge} edge`;
  const least: Bounded = { value: limit.toNumber() + halfLength.value, error: halfLength.error };
  const short = roundedUp(least).sub(room);
  const atDatum = edge === half.datum;
  const line = atDatum ? slot.fromZero.add(short) : slot.fromZero.sub(short);
  return {
    message: say`the ${openingWord(machine)} ${slot.fromDatum} from the ${half.datum} of ${parts} is ${slot.length} long and ${what}; the least is ${limit}`,
    cure: say`Move the line ${slot.fromZero} to ${line} or ${atDatum ? 'more' : 'less'}, so that its middle is at least ${roundedUp(least)} from the ${edge} edge, or leave it out here: leave out ${slot.fromZero}.`,
    source: joint.source,
    related: ids.flatMap((id) => {
      const part = context.part(id);
      const extent = joint.run && part?.extent[joint.run];
      return part && extent ? [{ message: say`${id} is ${extent} along the run`, source: part.source }] : [];
    }),
    about: {
      parts: ids,
      joint: joint.id,
      slots: group.map((near) => near.slot.id),
      statement: joint.statement,
    },
    data: { line: slot.fromZero.toString(), to: line.toString(), edge },
  };
}
