import type { Rational } from '../number/rational.js';
import { AXES, type Axis, highSide, lowSide, thicknessAxis } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { AsMade, Boxed } from './as-made.js';
import type { Plane } from './path.js';
import type { Stack } from './stack.js';

/** A distance in the cabinet as it comes out. */
export interface Distance {
  readonly axis: Axis;
  readonly from: Plane;
  readonly to: Plane;
  /** As planned, mm. */
  readonly length: Rational;
  readonly off: Stack;
  /** The parts it is made up of. */
  readonly through: readonly PartId[];
}

/** Outside width, depth and height, each by the parts that lie furthest out. */
export function outsideErrors(made: AsMade): readonly Distance[] {
  const parts = made.boxed();
  return AXES.flatMap((axis) => {
    const low = least(parts, (part) => part.box.lo[axis]);
    const high = least(parts, (part) => part.box.hi[axis].neg());
    if (!low || !high) return [];
    // One part that reaches all the way is the size by itself.
    const whole = parts.find(
      (part) => part.box.lo[axis].equals(low.box.lo[axis]) && part.box.hi[axis].equals(high.box.hi[axis]),
    );
    const [from, to] = whole ? [whole, whole] : [low, high];
    return distance(made, { part: from.id, side: lowSide(axis) }, { part: to.id, side: highSide(axis) }, axis);
  });
}

/** Clear openings: from a face to the next face that looks at it. */
export function openingErrors(made: AsMade): readonly Distance[] {
  const parts = made.boxed();
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
  return [{ axis, from, to, length: high.sub(low), off: path.off, through: path.through }];
}

function least(parts: readonly Boxed[], by: (part: Boxed) => Rational): Boxed | undefined {
  return parts.reduce<Boxed | undefined>((found, part) => (!found || by(part).lt(by(found)) ? part : found), undefined);
}
