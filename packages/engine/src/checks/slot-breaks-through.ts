import type { FittedPart } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { extentOf } from '../geometry/boxes.js';
import { Rational } from '../number/rational.js';
import { axisOf, isFace, isHigh, opposite, outward, type Side } from '../spec/sides.js';
import type { Source } from '../spec/source.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, once } from './support/alike.js';
import { milledHalves, openingWord } from './support/halves.js';
import { partNames } from './support/names.js';
import { recesses } from './support/recesses.js';
import { smallest } from './support/sheet.js';

/** Something cut so deep from one side of a part that too little is left under it. */
interface Deep {
  readonly part: FittedPart;
  readonly surface: Side;
  readonly depth: Rational;
  /** From the mouth to the far side of the thinnest part, mm. */
  readonly room: Rational;
  readonly statement: string;
  readonly joint?: string | undefined;
  readonly source: Source;
  /** "slots", "groove". */
  readonly word: string;
  /** What the other half of the joint would have to take up if this one were no deeper than it may be. */
  readonly rest?: Rational | undefined;
}

/** A slot, groove, rebate or housing leaves less than the shop's skin under its bottom, or comes out behind. */
export const slotBreaksThrough: Check = {
  code: 'slot-breaks-through',
  severity: 'error',
  *run(context) {
    const { skin } = context.spec.shop.limits;
    const deep = [...slots(context, skin), ...hollows(context, skin)];
    const groups = alike(deep, (d) => [d.statement, d.word, d.depth, d.room, isFace(d.surface, d.part.attitude)]);
    for (const group of groups) yield finding(context, group);
  },
};

/** Only what goes too deep is put into words. */
function* slots(context: CheckContext, skin: Rational): Generator<Deep> {
  for (const { joint, half, part, connector, machine } of milledHalves(context)) {
    const mouth = half.slots[0]?.centre[joint.axis];
    // Beyond a cant there is the whole board.
    if (half.role === 'mitre' || mouth === undefined || (half.turn && half.role === 'edge')) continue;
    const room = roomUnder(context, part, half.surface, mouth);
    if (!room || room.sub(half.depth).ge(skin)) continue;
    const most = Rational.max(Rational.ZERO, room.sub(skin));
    yield {
      part,
      surface: half.surface,
      depth: half.depth,
      room,
      statement: joint.statement,
      joint: joint.id,
      source: joint.source,
      word: `${openingWord(machine)}s`,
      rest: connector.across.add(connector.clearance ?? Rational.ZERO).sub(most),
    };
  }
}

function* hollows(context: CheckContext, skin: Rational): Generator<Deep> {
  for (const { part, cut, joint } of recesses(context)) {
    const axis = axisOf(cut.surface);
    const depth = extentOf(cut.box, axis);
    const mouth = outward(cut.surface) === 1 ? cut.box.hi[axis] : cut.box.lo[axis];
    const room = roomUnder(context, part, cut.surface, mouth);
    if (room?.sub(depth).lt(skin))
      yield { part, surface: cut.surface, depth, room, statement: joint.id, source: joint.source, word: cut.kind };
  }
}

/** From a cut's mouth to the opposite side of the part, the part as thin as it may come. */
function roomUnder(context: CheckContext, part: FittedPart, surface: Side, mouth: Rational): Rational | undefined {
  const axis = axisOf(surface);
  const thin = smallest(context, part, axis);
  const extent = part.extent[axis];
  const far = part.box?.[isHigh(surface) ? 'lo' : 'hi'][axis];
  if (!thin || !extent || !far) return undefined;
  return mouth.sub(far).abs().sub(extent.sub(thin));
}

function finding(context: CheckContext, group: readonly [Deep, ...Deep[]]): Found {
  const { skin } = context.spec.shop.limits;
  const [first] = group;
  const { depth, room, surface, word, part } = first;
  const names = once(group.map((d) => d.part.id));
  const left = room.sub(depth);
  const kind = isFace(surface, part.attitude) ? 'face' : 'edge';
  const one = group.every((d) => d.surface === surface);
  const near = one ? `the ${surface} ${kind}` : `one ${kind}`;
  const far = one ? `the ${opposite(surface)} ${kind}` : `the other ${kind}`;
  const verb = word.endsWith('s') ? 'are' : 'is';
  const what: Text =
    left.sign() < 0
      ? say`and ${word.endsWith('s') ? 'come' : 'comes'} out of ${far} by ${left.neg()}: the material is ${room} at its thinnest`
      : say`and ${word.endsWith('s') ? 'leave' : 'leaves'} ${left} of ${room}, the material at its thinnest; the least is ${skin}`;
  const most = room.sub(skin);
  const rest = first.rest
    ? say` Of the connector the other part then has to take ${first.rest}, room for glue counted.`
    : say``;
  return {
    message: say`the ${word} in ${partNames(context, names)} ${verb} ${depth} deep from ${near}, ${what}`,
    cure:
      most.sign() > 0
        ? say`Go no deeper than ${most} here, or use thicker material.${rest}`
        : say`Use thicker material: here it would have to be more than ${skin} thick.`,
    source: first.source,
    related: group.map((d) => ({ message: say`${d.part.id} is of ${d.part.material}`, source: d.part.source })),
    about: { parts: names, joint: first.joint, statement: first.statement },
    data: { depth: depth.toString(), most: most.toString() },
  };
}
