import type { FittedJoint } from '../fit/fit.js';
import type { Bounded } from '../number/bounded.js';
import type { PartId } from '../spec/spec.js';
import type { AsMade } from './as-made.js';
import { overStacks } from './reader.js';
import { less, type Stack } from './stack.js';
import type { Tried } from './tried.js';
import { longerBy } from './turned-as-made.js';

/** From end to end of what a turned part spans, and how far off that comes, mm. */
export interface Span {
  readonly part: PartId;
  /** The part on whose cant it stands. */
  readonly level: PartId;
  /** As planned: the root of the squares of the cant's legs. */
  readonly length: Bounded;
  /** Between the toes of the two parts it is mitred to; absent where it is not, and the cant as it is cut is told. */
  readonly between?: readonly [PartId, PartId] | undefined;
  readonly adds: Tried;
  readonly through: readonly PartId[];
}

/** How far an end that lies opposite the datum comes beyond the end of the cant, given what its part brings to it. */
export function beyondCant(made: AsMade, { host }: FittedJoint, own: Stack): Tried {
  const cant = made.turned.cant(host);
  if (!cant) return { stack: own };
  return { curve: overStacks([own, ...cant.off], (off = 0, x = 0, y = 0) => off - longerBy(cant, x, y)) };
}

/**
 * The opening at the mitres of a turned part, along it, both ends together: from toe to toe of the parts beside it is so
 * much more than the part is wide. `square` is what its own sawn end adds.
 */
export function turnedGap(made: AsMade, { entering }: FittedJoint, square: Stack): Tried {
  const room = made.turned.room(entering);
  if (!room) return { stack: square };
  const own = less(square, made.size(entering, 'x'));
  return { curve: overStacks([own, ...room.off], (off = 0, x = 0, y = 0) => longerBy(room, x, y) + off) };
}

/** The span of each turned part: from toe to toe beside it, else from end to end of its cant. */
export const spanErrors = (made: AsMade): readonly Span[] =>
  made.boxed().flatMap(({ id, width }): readonly Span[] => {
    const level = made.turned.part(id)?.on?.part;
    if (level === undefined || !width) return [];
    const room = made.turned.room(id);
    const vector = room ?? made.turned.cant(level);
    if (!vector) return [];
    const curve = overStacks(vector.off, (x = 0, y = 0) => longerBy(vector, x, y));
    const between = room && ([room.from, room.to] as const);
    return [{ part: id, level, length: width, between, adds: { curve }, through: room?.through ?? [level] }];
  });
