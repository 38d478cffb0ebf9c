import type { FittedJoint } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { mouthLength, reaches, surelyReaches } from '../geometry/mouth.js';
import { addBounded, type Bounded, boundedOf } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import { isHigh } from '../spec/sides.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, once } from './support/alike.js';
import { type Milled, milledHalves, openingWord } from './support/halves.js';
import { partNames } from './support/names.js';
import { roundedUp } from './support/round.js';
import { spreadTooLong } from './support/spread.js';

/** A joint is too short for two slots, or two slots of one row run into each other. */
export const pairTooShort: Check = {
  code: 'pair-too-short',
  severity: 'error',
  *run(context) {
    const halves = [...milledHalves(context)];
    const rows = halves.filter((milled) => spreadTooLong(context, milled.joint) || tooNear(context, milled));
    for (const group of alike(rows, ({ joint }) => [joint.statement, joint.entering])) yield finding(context, group);
  },
};

/** The first two slots of a row whose ends leave less than the shop's skin between them. */
function tooNear(
  { spec }: CheckContext,
  { half, connector, machine }: Milled,
): readonly [Rational, Rational] | undefined {
  const { skin } = spec.shop.limits;
  const least = skin.toNumber();
  for (const [i, slot] of half.slots.entries()) {
    const next = half.slots[i + 1];
    if (!next) continue;
    const rough = (next.fromZero.toNumber() - slot.fromZero.toNumber() - least) / 2;
    if (surelyReaches(slot.length, rough, 0)) continue;
    const between = next.fromZero.sub(slot.fromZero).sub(skin);
    if (!reaches(connector, machine, half.depth, between.div(Rational.TWO), Rational.ZERO))
      return [slot.fromZero, next.fromZero];
  }
  return undefined;
}

function finding(context: CheckContext, group: readonly [Milled, ...Milled[]]): Found {
  const [milled] = group;
  const { joint, half, connector, machine } = milled;
  const { skin } = context.spec.shop.limits;
  const hosts = once(group.map((m) => m.joint.host));
  const length = mouthLength(connector, machine, half.depth);
  const word = openingWord(machine);
  const least = needed(context, length);
  const contact = lengthOf(joint);
  const pair = tooNear(context, milled);
  const over = spreadTooLong(context, joint);
  const where = say`${joint.entering} meets ${partNames(context, hosts)} along ${contact}`;
  const message = over
    ? say`${where}, too short by ${over} for the first and the last line of ${joint.pattern ?? 'the layout'}, so that only one ${word} is left`
    : say`the ${word}s at ${pair?.[0] ?? half.across} and ${pair?.[1] ?? half.across} from zero are ${length} long and leave less than ${skin} between them`;
  const enough = boundedOf(contact).value >= least.value;
  const apart = roundedUp(addBounded(length, boundedOf(skin)));
  const lines = twoLines(context, milled, length, apart);
  return {
    message: enough ? message : say`${message}; two ${word}s of ${connector.name} need ${least}`,
    cure: enough
      ? say`Set the lines at least ${apart} apart${lines ? say`, as in two lines for this joint: connect ${connector.name} by lines ${lines[0]}, ${lines[1]}` : []}.`
      : say`Take a connector with a shorter ${word}, or join along at least ${roundedUp(least)}.`,
    source: joint.source,
    related: [{ message: say`${connector.name} is described here`, source: connector.source }],
    about: {
      parts: [joint.entering, ...hosts],
      joint: joint.id,
      slots: half.slots.map((slot) => slot.id),
      statement: joint.statement,
    },
    data: { contact: contact.toString() },
  };
}

/**
 * Two lines from zero that a joint has room for: as near to its ends as the shop lets a slot and the fence a machine
 * come. Undefined where they would be too near to each other.
 */
function twoLines(
  { spec: { shop } }: CheckContext,
  { joint: { contact, datum, zero }, machine }: Milled,
  length: Bounded,
  apart: Rational,
): readonly [Rational, Rational] | undefined {
  if (!contact || !datum || !zero) return undefined;
  const inset = roundedUp({ value: length.value / 2, error: length.error / 2 }).add(shop.limits.slotToEdge);
  const body = shop.jig ? (machine.body?.div(Rational.TWO) ?? Rational.ZERO) : Rational.ZERO;
  const [near, far] = isHigh(datum)
    ? [zero.sub(contact.hi), zero.sub(contact.lo)]
    : [contact.lo.sub(zero), contact.hi.sub(zero)];
  const lines = [Rational.max(near.add(inset), body), far.sub(inset)] as const;
  return lines[1].sub(lines[0]).lt(apart) ? undefined : lines;
}

/** Two openings, the shop's distance to the edge at both ends and its skin between them. */
function needed({ spec }: CheckContext, length: Bounded): Bounded {
  const { slotToEdge, skin } = spec.shop.limits;
  const rest = boundedOf(slotToEdge.mul(Rational.TWO).add(skin));
  return addBounded({ value: 2 * length.value, error: 2 * length.error }, rest);
}

const lengthOf = ({ contact }: FittedJoint): Rational => (contact ? contact.hi.sub(contact.lo) : Rational.ZERO);
