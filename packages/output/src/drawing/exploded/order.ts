import { TOUCH } from '../scene/figures.js';
import { type Bounds, boundsOf, hullOf, meet, overlap } from './flat.js';
import { type Piece, split } from './solid.js';
import { dot, type Vector } from './vector.js';
import { type Eye, type Flat, onPaper } from './view.js';

/** A piece of a part where it is drawn. */
export interface Placed<Owner> {
  readonly owner: Owner;
  readonly piece: Piece;
  /** Directions of its faces that are not square to an axis. */
  readonly slants: readonly Vector[];
}

/** A piece as the reader sees it. */
export interface Seen<Owner> extends Placed<Owner> {
  readonly hull: readonly Flat[];
  readonly bounds: Bounds;
  /** Where it begins and ends along each axis. */
  readonly reach: readonly Reach[];
}

interface Reach {
  readonly lo: number;
  readonly hi: number;
}

const SQUARE: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

// A ring of pieces each before the next is rare, and one cut opens it; more than this is not worth the wait.
const MOST_SPLITS = 64;

/**
 * Pieces from the farthest to the nearest, so that each may be painted over those before it. Two convex pieces are
 * parted by a plane: whichever is on the reader's side of it cannot be covered by the other. Where several pieces
 * cover each other in a ring, one of them is cut in two.
 */
export function backToFront<Owner>(placed: readonly Placed<Owner>[], eye: Eye): readonly Seen<Owner>[] {
  const done: Seen<Owner>[] = [];
  let left = placed.map((one) => seen(one, eye));
  let covers = left.map((a) => new Set(left.filter((b) => isBefore(b, a, eye))));
  for (let splits = 0; left.length > 0; ) {
    const next = pick(left, covers, done.at(-1)?.owner);
    if (next >= 0 || splits >= MOST_SPLITS) {
      const chosen = left[Math.max(next, 0)] as Seen<Owner>;
      done.push(chosen);
      covers = covers.filter((_, i) => left[i] !== chosen);
      for (const behind of covers) behind.delete(chosen);
      left = left.filter((one) => one !== chosen);
      continue;
    }
    splits += 1;
    const opened = openRing(left, covers, eye);
    if (!opened) splits = MOST_SPLITS;
    else {
      left = opened;
      covers = left.map((a) => new Set(left.filter((b) => isBefore(b, a, eye))));
    }
  }
  return done;
}

/** A piece with nothing left behind it, of the part painted last if there is one. */
function pick<Owner>(
  left: readonly Seen<Owner>[],
  behind: readonly ReadonlySet<Seen<Owner>>[],
  last: Owner | undefined,
): number {
  const same = left.findIndex((one, i) => one.owner === last && behind[i]?.size === 0);
  return same >= 0 ? same : behind.findIndex((others) => others.size === 0);
}

function seen<Owner>(one: Placed<Owner>, eye: Eye): Seen<Owner> {
  const hull = hullOf(one.piece.points.map((p) => onPaper(eye, p)));
  return { ...one, hull, bounds: boundsOf(hull), reach: SQUARE.map((direction) => range(one, direction)) };
}

/** Whether `a` has to be painted before `b`: they overlap on paper, and what parts them puts `b` nearer. */
function isBefore<Owner>(a: Seen<Owner>, b: Seen<Owner>, eye: Eye): boolean {
  if (a === b || !meet(a.bounds, b.bounds) || !overlap(a.hull, b.hull)) return false;
  let verdict: boolean | undefined;
  let least = Infinity;
  let guess = false;
  const slants = a.slants.length + b.slants.length > 0 ? [...a.slants, ...b.slants] : a.slants;
  for (let i = 0; i < SQUARE.length + slants.length; i += 1) {
    const direction = SQUARE[i] ?? (slants[i - SQUARE.length] as Vector);
    const facing = dot(direction, eye.toward);
    if (Math.abs(facing) < 1e-9) continue;
    const ra = a.reach[i] ?? range(a, direction);
    const rb = b.reach[i] ?? range(b, direction);
    const [ab, ba] = [ra.hi - rb.lo, rb.hi - ra.lo];
    const nearer = ab <= TOUCH ? facing > 0 : ba <= TOUCH ? facing < 0 : undefined;
    if (nearer === undefined) {
      // They go into each other: the plane they are nearest to being parted by has to do.
      const depth = Math.min(ab, ba);
      if (depth < least) {
        least = depth;
        guess = ab < ba ? facing > 0 : facing < 0;
      }
      continue;
    }
    // Parted both ways, neither can cover the other.
    if (verdict !== undefined && verdict !== nearer) return false;
    verdict = nearer;
  }
  return verdict ?? guess;
}

function range(one: Placed<unknown>, direction: Vector): Reach {
  let [lo, hi] = [Infinity, -Infinity];
  for (const p of one.piece.points) {
    const at = dot(direction, p);
    if (at < lo) lo = at;
    if (at > hi) hi = at;
  }
  return { lo, hi };
}

/** The pieces with one of a ring cut in two by a side of another of it. */
function openRing<Owner>(
  left: readonly Seen<Owner>[],
  behind: readonly ReadonlySet<Seen<Owner>>[],
  eye: Eye,
): Seen<Owner>[] | undefined {
  const ring = ringIn(left, behind);
  for (const one of ring) {
    for (const other of ring) {
      if (one === other) continue;
      for (const direction of SQUARE) {
        const [own, its] = [range(one, direction), range(other, direction)];
        const at = [its.lo, its.hi].find((plane) => plane > own.lo + TOUCH && plane < own.hi - TOUCH);
        if (at === undefined) continue;
        const halves = split(one.piece, direction, at).map((piece) => seen({ ...one, piece }, eye));
        return left.flatMap((each) => (each === one ? halves : [each]));
      }
    }
  }
  return undefined;
}

/** A ring of pieces each behind the one before it; there is one when none has nothing behind it. */
function ringIn<Owner>(
  left: readonly Seen<Owner>[],
  behind: readonly ReadonlySet<Seen<Owner>>[],
): readonly Seen<Owner>[] {
  const path: Seen<Owner>[] = [];
  let at = left[0];
  while (at !== undefined && !path.includes(at)) {
    path.push(at);
    [at] = behind[left.indexOf(at)] ?? [];
  }
  return at === undefined ? path : path.slice(path.indexOf(at));
}
