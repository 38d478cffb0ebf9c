import type { FittedPart } from '../fit/fit.js';
import { say, type Text } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import {
  AXES,
  type Axis,
  axisOf,
  highSide,
  isFace,
  isHigh,
  lowSide,
  opposite,
  type Side,
  thicknessAxis,
} from '../spec/sides.js';
import type { Source } from '../spec/source.js';
import type { Check, CheckContext, Found } from './check.js';
import { alike, once } from './support/alike.js';
import { type Milled, milledHalves, openingWord } from './support/halves.js';
import { partNames } from './support/names.js';
import { recesses } from './support/recesses.js';
import { smallest } from './support/sheet.js';

/** The material between a slot or groove and the nearer side of its part that it runs beside. */
interface Wall {
  readonly part: FittedPart;
  readonly side: Side;
  /** The side is the part's cant. */
  readonly cant?: boolean | undefined;
  /** At the worst of sheet and machine, mm; negative where it breaks out. */
  readonly left: Rational;
  /** The same on the other side of the slot, mm. */
  readonly behind: Rational;
  readonly what: string;
  /** What to move, and how. */
  readonly move: (by: Rational) => Text;
  readonly statement: string;
  readonly joint?: string | undefined;
  readonly source: Source;
}

/** The wall beside a slot or groove, across its run, is thinner than the shop allows. */
export const thinWall: Check = {
  code: 'thin-wall',
  severity: 'error',
  *run(context) {
    const thin = [...besideSlots(context), ...besideRecesses(context)];
    const groups = alike(thin, (w) => [w.statement, w.what, w.left, w.side]);
    for (const group of groups) yield finding(context, group);
  },
};

/** Only what is too thin is put into words: most walls are not. */
function* besideSlots(context: CheckContext): Generator<Wall> {
  for (const milled of milledHalves(context)) {
    const { joint, half, part, machine } = milled;
    const near = half.from.side;
    const extent = smallest(context, part, axisOf(near));
    if (half.role === 'mitre' || half.slots.length === 0 || !extent) continue;
    const { plus = Rational.ZERO, minus = Rational.ZERO } = machine.base;
    const beside = machine.kerf.div(Rational.TWO);
    const least = context.spec.shop.limits.wall;
    const left = half.across.sub(beside).sub(minus);
    const right = extent.sub(half.across).sub(beside).sub(plus);
    if (left.ge(least) && right.ge(least)) continue;
    const { statement, source } = joint;
    const what = `${openingWord(machine)}s`;
    yield nearer(
      { part, what, statement, joint: joint.id, source, cant: half.turn !== undefined && axisOf(near) !== 'z' },
      { side: near, left, move: (by) => moveSlots(milled, by) },
      { side: opposite(near), left: right, move: (by) => moveSlots(milled, by.neg()) },
    );
  }
}

/** An edge's slots move with their distance from the reference; a face's slots move with the part that meets it. */
function moveSlots({ half, other }: Milled, by: Rational): Text {
  if (half.role === 'edge')
    return say`Mill them at ${half.across.add(by)} from the ${half.from.side} face: at ${half.across.add(by)} from reference`;
  return say`Move ${other.part} ${by.abs()} ${by.sign() > 0 ? 'away from' : 'toward'} the ${half.from.side} end of ${half.part}`;
}

/**
 * A groove or housing runs between two sides of its part, and a stopped one ends before two others. A rebate is open on
 * one side on purpose, and so is a recess in a face that reaches an edge.
 */
function* besideRecesses(context: CheckContext): Generator<Wall> {
  const least = context.spec.shop.limits.wall;
  for (const { part, cut, joint } of recesses(context)) {
    const { box } = part;
    if (cut.kind === 'rebate' || !box) continue;
    const thick = thicknessAxis(part.attitude);
    const across = AXES.find((axis) => axis !== cut.run && axis !== axisOf(cut.surface)) as Axis;
    for (const axis of joint.stopped ? [across, cut.run] : [across]) {
      const thin = smallest(context, part, axis);
      const extent = part.extent[axis];
      if (!extent || !thin) continue;
      const worst = extent.sub(thin);
      const wall = (side: Side): Beside => {
        const left = isHigh(side) ? box.hi[axis].sub(cut.box.hi[axis]) : cut.box.lo[axis].sub(box.lo[axis]);
        return {
          side,
          left: left.sub(worst),
          move: (by) =>
            axis === across
              ? say`Move ${partNames(context, joint.entering)} ${by} away from the ${side} of ${part.id}`
              : say`Stop it ${by} further from the ${side} of ${part.id}`,
        };
      };
      const [low, high] = [wall(lowSide(axis)), wall(highSide(axis))];
      // Between two edges the sheet's thickness is of no account, and a recess that reaches one leaves no wall to break.
      const breaks = ({ left }: Beside): boolean => left.lt(least) && (axis === thick || left.sign() > 0);
      if (!breaks(low) && !breaks(high)) continue;
      const what = { part, what: cut.kind, statement: joint.id, source: joint.source };
      yield breaks(low) && breaks(high)
        ? nearer(what, low, high)
        : breaks(low)
          ? { ...what, ...low, behind: high.left }
          : { ...what, ...high, behind: low.left };
    }
  }
}

type Beside = Pick<Wall, 'side' | 'left' | 'move'>;

function nearer(what: Omit<Wall, keyof Beside | 'behind'>, one: Beside, two: Beside): Wall {
  return one.left.le(two.left) ? { ...what, ...one, behind: two.left } : { ...what, ...two, behind: one.left };
}

function finding(context: CheckContext, group: readonly [Wall, ...Wall[]]): Found {
  const least = context.spec.shop.limits.wall;
  const [first] = group;
  const { left, behind, side, what } = first;
  const parts = once(group.map((w) => w.part.id));
  const many = what.endsWith('s');
  const edge = first.cant ? 'cant' : `${side} ${isFace(side, first.part.attitude) ? 'face' : 'edge'}`;
  const where = say`the ${edge} of ${partNames(context, parts)}`;
  const result =
    left.sign() < 0
      ? say`${many ? 'break' : 'breaks'} out of ${where} by ${left.neg()}`
      : say`${many ? 'leave' : 'leaves'} a wall of ${left} to ${where}; the least is ${least}`;
  const short = least.sub(left);
  const room = behind.sub(short).ge(least);
  return {
    message: say`the ${what} ${result} (thinnest sheet, machine off by its tolerance)`,
    cure: room
      ? say`${first.move(short)}.`
      : say`No place in this thickness leaves ${least} on both sides: use thicker material or a thinner connector.`,
    source: first.source,
    related: group.map((w) => ({ message: say`${w.part.id} is of ${w.part.material}`, source: w.part.source })),
    about: { parts, joint: first.joint, statement: first.statement },
    data: { short: short.toString(), side },
  };
}
