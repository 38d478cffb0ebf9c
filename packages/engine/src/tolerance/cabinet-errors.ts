import type { Rational } from '../number/rational.js';
import { AXES, type Axis, highSide, isHigh, lowSide, type Side, thicknessAxis } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { AsMade, Boxed } from './as-made.js';
import type { Plane } from './path.js';
import { furthestReach, type Reach } from './reach-errors.js';
import { overStacks } from './reader.js';
import type { Tried } from './tried.js';

/** A distance in the cabinet as it comes out. */
export interface Distance {
  readonly axis: Axis;
  readonly from: Plane;
  readonly to: Plane;
  /** As planned, mm; where a turned part has an end of it a root, to the nearest millionth. */
  readonly length: Rational;
  readonly adds: Tried;
  /** The parts it is made up of. */
  readonly through: readonly PartId[];
}

/** Outside width, depth and height, each by the parts that lie furthest out. */
export function outsideErrors(made: AsMade): readonly Distance[] {
  return AXES.flatMap((axis) => {
    // Heights of turned parts are the cabinet's; across and along they have a frame of their own.
    const parts = made.boxed().filter(({ turn }) => !turn || axis === 'z');
    const low = least(parts, (part) => part.box.lo[axis]);
    const high = least(parts, (part) => part.box.hi[axis].neg());
    if (!low || !high) return [];
    const reaches =
      axis === 'z'
        ? []
        : [
            furthestReach(made, lowSide(axis), low.box.lo[axis]),
            furthestReach(made, highSide(axis), high.box.hi[axis]),
          ];
    if (reaches.some((reach) => reach)) return overReaches(made, axis, parts, [low, high], reaches);
    // One part that reaches all the way is the size by itself.
    const whole = parts.find(
      (part) => part.box.lo[axis].equals(low.box.lo[axis]) && part.box.hi[axis].equals(high.box.hi[axis]),
    );
    const [from, to] = whole ? [whole, whole] : [low, high];
    return distance(made, { part: from.id, side: lowSide(axis) }, { part: to.id, side: highSide(axis) }, axis);
  });
}

/** An outside size that a corner of a turned part has one end of, or both: what that brings is no sum. */
function overReaches(
  made: AsMade,
  axis: Axis,
  parts: readonly Boxed[],
  [low, high]: readonly [Boxed, Boxed],
  [first, last]: readonly (Reach | undefined)[],
): readonly Distance[] {
  // The level part that carries the turned one may end at the other side as well, and is the nearest way there.
  const near = (furthest: Boxed, side: Side, other: Reach | undefined): Plane => {
    const end = isHigh(side) ? 'hi' : 'lo';
    const own = parts.find(({ id, box }) => id === other?.base.part && box[end][axis].equals(furthest.box[end][axis]));
    return { part: (own ?? furthest).id, side };
  };
  const from = first?.base ?? near(low, lowSide(axis), last);
  const to = last?.base ?? near(high, highSide(axis), first);
  const path = made.held.path(from, to);
  const [lo, hi] = [first?.at ?? low.box.lo[axis], last?.at ?? high.box.hi[axis]];
  if (!path) return [];
  const stacks = [path.off, ...(first?.stacks ?? []), ...(last?.stacks ?? [])];
  const count = 1 + (first?.stacks.length ?? 0);
  const curve = overStacks(stacks, (...sums) => {
    const [between = 0] = sums;
    return between + (last?.moved(...sums.slice(count)) ?? 0) - (first?.moved(...sums.slice(1, count)) ?? 0);
  });
  const end = (reach: Reach | undefined, plane: Plane, side: Side) => (reach ? { part: reach.part, side } : plane);
  const through = [...(first ? [first.part] : []), ...path.through, ...(last ? [last.part] : [])];
  return [
    {
      axis,
      from: end(first, from, lowSide(axis)),
      to: end(last, to, highSide(axis)),
      length: hi.sub(lo),
      adds: { curve },
      through: [...new Set(through)],
    },
  ];
}

/** Clear openings: from a face to the next face that looks at it. */
export function openingErrors(made: AsMade): readonly Distance[] {
  // No face of a turned part looks along an axis.
  const parts = made.boxed().filter(({ turn }) => !turn);
  return AXES.flatMap((axis) => {
    const along = parts
      .filter(({ attitude }) => thicknessAxis(attitude) === axis)
      .sort((a, b) => a.box.lo[axis].compare(b.box.lo[axis]));
    return along.flatMap((low, i) =>
      facing(low, along.slice(i + 1), axis).flatMap((high) =>
        distance(made, { part: low.id, side: highSide(axis) }, { part: high.id, side: lowSide(axis) }, axis),
      ),
    );
  });
}

/** The parts beyond that nothing nearer hides wholly; touching ones leave no opening. */
function facing(low: Boxed, beyond: readonly Boxed[], axis: Axis): readonly Boxed[] {
  const found: Boxed[] = [];
  for (const high of beyond) {
    if (!high.box.lo[axis].gt(low.box.hi[axis]) || !overlap(low, high, axis)) continue;
    if (!found.some((nearer) => nearer.box.hi[axis].le(high.box.lo[axis]) && overlap(nearer, high, axis)))
      found.push(high);
  }
  return found;
}

const overlap = (a: Boxed, b: Boxed, along: Axis): boolean =>
  AXES.filter((axis) => axis !== along).every(
    (axis) => a.box.lo[axis].lt(b.box.hi[axis]) && b.box.lo[axis].lt(a.box.hi[axis]),
  );

function distance(made: AsMade, from: Plane, to: Plane, axis: Axis): readonly Distance[] {
  const path = made.held.path(from, to);
  const [low, high] = [made.solved.at(from.part, from.side), made.solved.at(to.part, to.side)];
  if (!path || !low || !high) return [];
  return [{ axis, from, to, length: high.sub(low), adds: { stack: path.off }, through: path.through }];
}

function least(parts: readonly Boxed[], by: (part: Boxed) => Rational): Boxed | undefined {
  return parts.reduce<Boxed | undefined>((found, part) => (!found || by(part).lt(by(found)) ? part : found), undefined);
}
