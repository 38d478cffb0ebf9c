import type { Bounds } from '../geometry/solid.js';
import { dot, type Vector } from '../geometry/vector.js';
import type { HalfSpace } from '../solids/body.js';
import type { Piece } from './assembly.js';
import { hasInside } from './inside.js';

/** What is thinner than this is a touch, not a meeting, mm. */
const FILM = 1e-6;

/** A straight move: a way, and how many times its length at most. */
export interface Move {
  readonly way: Vector;
  readonly upTo: number;
}

/** Whether a piece that moves runs into another that stays. Pieces that share room at rest are left out. */
export function runsInto(moving: Piece, staying: Piece, move: Move): boolean {
  if (!during(moving, staying, move)) return false;
  if (isPlain(moving) && isPlain(staying)) return !overlapping(moving, staying);
  if (sharesRoom(moving, staying)) return false;
  const [a, b] = [innerOf(moving), innerOf(staying)];
  if (a && b && during(a, b, move)) return true;
  return hasInside([...swept(moving, move), ...spacesOf(staying)]);
}

const isPlain = ({ slants }: Piece): boolean => slants.length === 0;
const innerOf = (piece: Piece): Bounds | undefined => (isPlain(piece) ? piece : piece.core);

/** Whether two pieces take up the same room as they stand. */
export function sharesRoom(a: Piece, b: Piece): boolean {
  if (!overlapping(a, b)) return false;
  return (isPlain(a) && isPlain(b)) || hasInside([...spacesOf(a), ...spacesOf(b)]);
}

const overlapping = (a: Bounds, b: Bounds): boolean =>
  a.lo[0] < b.hi[0] &&
  b.lo[0] < a.hi[0] &&
  a.lo[1] < b.hi[1] &&
  b.lo[1] < a.hi[1] &&
  a.lo[2] < b.hi[2] &&
  b.lo[2] < a.hi[2];

/** Whether boxes meet at any time of a move: on every axis they overlap from one time to another. */
function during(a: Bounds, b: Bounds, { way, upTo }: Move): boolean {
  let [from, to] = [0, upTo];
  for (const i of [0, 1, 2] as const) {
    const speed = way[i];
    if (speed === 0) {
      if (a.hi[i] <= b.lo[i] || b.hi[i] <= a.lo[i]) return false;
      continue;
    }
    const [one, two] = [(b.lo[i] - a.hi[i]) / speed, (b.hi[i] - a.lo[i]) / speed];
    from = Math.max(from, Math.min(one, two));
    to = Math.min(to, Math.max(one, two));
  }
  return to - from > FILM;
}

/**
 * The room a moving piece passes through, as the planes around it: the time is eliminated from its own planes by
 * pairing each that it leaves behind with each that it moves toward (Fourier and Motzkin).
 */
function swept(piece: Piece, { way, upTo }: Move): readonly HalfSpace[] {
  const kept: HalfSpace[] = [];
  // normal · (p − t·way) ≤ offset: the first list bounds t from below, the second from above.
  const least: { readonly space: HalfSpace; readonly speed: number }[] = [];
  const most: { readonly space: HalfSpace; readonly speed: number }[] = [];
  for (const space of spacesOf(piece)) {
    const speed = dot(space.normal, way);
    if (speed > 0) least.push({ space, speed });
    else if (speed < 0) most.push({ space, speed: -speed });
    else kept.push(space);
  }
  for (const a of most) {
    kept.push(a.space);
    for (const b of least) kept.push(sum(a.space, b.speed, b.space, a.speed));
  }
  if (upTo < Number.POSITIVE_INFINITY)
    for (const { space, speed } of least) kept.push({ normal: space.normal, offset: space.offset + speed * upTo });
  return kept;
}

const sum = (a: HalfSpace, ka: number, b: HalfSpace, kb: number): HalfSpace => ({
  normal: [
    a.normal[0] * ka + b.normal[0] * kb,
    a.normal[1] * ka + b.normal[1] * kb,
    a.normal[2] * ka + b.normal[2] * kb,
  ],
  offset: a.offset * ka + b.offset * kb,
});

const spacesOf = ({ lo, hi, slants }: Piece): readonly HalfSpace[] => [
  { normal: [1, 0, 0], offset: hi[0] },
  { normal: [0, 1, 0], offset: hi[1] },
  { normal: [0, 0, 1], offset: hi[2] },
  { normal: [-1, 0, 0], offset: -lo[0] },
  { normal: [0, -1, 0], offset: -lo[1] },
  { normal: [0, 0, -1], offset: -lo[2] },
  ...slants,
];
