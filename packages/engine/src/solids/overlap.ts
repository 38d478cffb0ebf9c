import type { Box, FittedPart, Turn } from '../fit/fit.js';
import { common, cut as cutBox, withoutAll } from '../geometry/boxes.js';
import { isRecess, type RecessCut } from '../geometry/cut-solid.js';
import type { Bounds } from '../geometry/solid.js';
import type { Bounded } from '../number/bounded.js';
import type { Rational } from '../number/rational.js';
import { AXES, type Axis, axisOf } from '../spec/sides.js';
import { boundsOfBox, type HalfSpace, INDEX, type SawnBody, spacesOf, turnedOut } from './body.js';
import { boundsOfPolytope, type Polytope, polytopeWithout } from './polytope.js';

/** Room that two parts both take up: one connected piece of it. */
export interface SharedRoom {
  /** The box around it. */
  readonly bounds: Bounds;
  /** Its extent along each axis, mm: exact unless a slanting plane bounds it. */
  readonly extent: Record<Axis, Rational | Bounded>;
}

export interface Placed {
  readonly part: FittedPart;
  readonly body: SawnBody;
}

/** How exactly the corners of a body with slanting planes are known, mm. */
const CORNERS = 1e-7;

/**
 * What two parts both take up once everything that makes way is cut: grooves, rebates, housings, notches and bevels.
 * Slots make no way for a part. `madeFor` tells whether a recess is made for the other part: it is then taken as wide
 * as that part, since whether it is wide enough is told elsewhere. Connected pieces, the largest first.
 */
export function sharedRoom(
  one: Placed,
  two: Placed,
  madeFor: (recess: RecessCut, other: FittedPart) => boolean,
): readonly SharedRoom[] {
  const shared = common(one.body.box, two.body.box);
  if (!shared) return [];
  const free = [...roomIn(one.part, two.part, shared, madeFor), ...roomIn(two.part, one.part, shared, madeFor)].filter(
    ({ box, turn }) => turn || common(shared, box),
  );
  // Whatever slants past the shared room leaves it as exact as it is; a recess told in a turned frame does not.
  const around = boundsOfBox(shared);
  const slants = [...one.body.slants, ...two.body.slants].filter((space) => cutsInto(around, space));
  const exact = slants.length === 0 && free.every(({ turn }) => !turn);
  const pieces = exact
    ? exactly(
        shared,
        free.map(({ box }) => box),
      )
    : bySlants(shared, free, slants);
  return connected(pieces).sort((a, b) => volume(b.bounds) - volume(a.bounds));
}

/** Whether some of a box lies beyond a plane: its corner that is farthest along the plane's normal. */
const cutsInto = ({ lo, hi }: Bounds, { normal, offset }: HalfSpace): boolean =>
  ([0, 1, 2] as const).reduce<number>((sum, i) => sum + normal[i] * (normal[i] > 0 ? hi[i] : lo[i]), 0) > offset;

/** Room that is cut out, told in the frame of its part. */
interface Free {
  readonly box: Box;
  readonly turn: Turn | undefined;
}

/** Room cut out of a part that may make way for the other. */
function* roomIn(
  part: FittedPart,
  other: FittedPart,
  shared: Box,
  madeFor: (recess: RecessCut, other: FittedPart) => boolean,
): Generator<Free> {
  const { turn } = part;
  for (const cut of part.cuts) {
    if (!isRecess(cut)) continue;
    const across = AXES.find((axis) => axis !== cut.run && axis !== axisOf(cut.surface)) as Axis;
    const made = turn === undefined && madeFor(cut, other);
    yield { box: made ? cutBox(cut.box, across, shared.lo[across], shared.hi[across]) : cut.box, turn };
  }
}

interface Piece {
  readonly bounds: Bounds;
  /** Absent where a slanting plane bounds it. */
  readonly box?: Box | undefined;
}

const exactly = (shared: Box, free: readonly Box[]): readonly Piece[] =>
  withoutAll(shared, free).map((box) => ({ bounds: boundsOfBox(box), box }));

function bySlants(shared: Box, free: readonly Free[], slants: Polytope): readonly Piece[] {
  let left: readonly Polytope[] = [[...spacesOf(boundsOfBox(shared)), ...slants]];
  if (!boundsOfPolytope(left[0] as Polytope)) return [];
  for (const { box, turn } of free) {
    const taken = spacesOf(boundsOfBox(box)).map((space) => turnedOut(turn, space));
    left = left.flatMap((piece) => polytopeWithout(piece, taken));
  }
  return left.flatMap((piece) => {
    const bounds = boundsOfPolytope(piece);
    return bounds ? [{ bounds }] : [];
  });
}

/** Pieces that touch are one. */
function connected(pieces: readonly Piece[]): SharedRoom[] {
  const groups: Piece[][] = [];
  for (const piece of pieces) {
    const met = groups.filter((group) => group.some((other) => touch(piece.bounds, other.bounds)));
    for (const group of met) groups.splice(groups.indexOf(group), 1);
    groups.push([piece, ...met.flat()]);
  }
  return groups.map(roomOf);
}

/** With a face in common, not only an arris. */
function touch(a: Bounds, b: Bounds): boolean {
  const gaps = ([0, 1, 2] as const).map((i) => Math.max(a.lo[i] - b.hi[i], b.lo[i] - a.hi[i]));
  return gaps.every((gap) => gap <= CORNERS) && gaps.filter((gap) => gap > -CORNERS).length <= 1;
}

function roomOf(group: readonly Piece[]): SharedRoom {
  const on = (i: 0 | 1 | 2) => ({
    lo: Math.min(...group.map(({ bounds }) => bounds.lo[i])),
    hi: Math.max(...group.map(({ bounds }) => bounds.hi[i])),
  });
  const [x, y, z] = [on(0), on(1), on(2)];
  const bounds: Bounds = { lo: [x.lo, y.lo, z.lo], hi: [x.hi, y.hi, z.hi] };
  return {
    bounds,
    extent: { x: extent(group, bounds, 'x'), y: extent(group, bounds, 'y'), z: extent(group, bounds, 'z') },
  };
}

function extent(group: readonly Piece[], bounds: Bounds, axis: Axis): Rational | Bounded {
  const i = INDEX[axis];
  const boxes = group.flatMap(({ box }) => box ?? []);
  const [first] = boxes;
  if (!first || boxes.length < group.length) return { value: bounds.hi[i] - bounds.lo[i], error: CORNERS };
  const ends = boxes.reduce(
    ({ lo, hi }, box) => ({
      lo: box.lo[axis].lt(lo) ? box.lo[axis] : lo,
      hi: box.hi[axis].gt(hi) ? box.hi[axis] : hi,
    }),
    { lo: first.lo[axis], hi: first.hi[axis] },
  );
  return ends.hi.sub(ends.lo);
}

const volume = ({ lo, hi }: Bounds): number => (hi[0] - lo[0]) * (hi[1] - lo[1]) * (hi[2] - lo[2]);
