import type { FittedPart, Half } from '../fit/fit.js';
import { directionIn, directionOut } from '../geometry/turn.js';
import { cross, dot, negate, normal, type Vector } from '../geometry/vector.js';
import type { Setting } from './setting.js';

/**
 * How a piece lies before the operator: three directions of the piece itself, in its own frame, each of length 1 and square
 * to the others; right × up = toward. A mitred piece is told as it would lie with its end sawn square; it is then tilted
 * about `right` until its mitre looks at the operator.
 */
export interface BenchPose {
  readonly right: Vector;
  readonly up: Vector;
  readonly toward: Vector;
  /** Degrees off lying square, 0 but for mitres. */
  readonly tilt: number;
}

/** How a half's piece lies, with its slotted surface toward the operator and its reference looking as the setting says. */
export function poseOf(half: Half, { pose }: Pick<Setting, 'pose'>, part: Pick<FittedPart, 'turn'>): BenchPose {
  // A half along a cant names its sides in the frame of the part it meets.
  const own = (direction: Vector): Vector =>
    half.turn ? directionIn(part.turn, directionOut(half.turn, direction)) : direction;
  const toward = own(normal(half.surface));
  const outer = normal(half.mitre?.outer ?? half.from.side);
  const reference = own(half.from.kind === 'heel' ? negate(outer) : outer);
  const up = pose.reference === 'up' ? reference : negate(reference);
  return { right: cross(up, toward), up, toward, tilt: half.mitre?.angle ?? 0 };
}

/** A turn about one of the operator's own directions, which do not turn with the piece: by the right-hand rule, degrees. */
export interface PieceTurn {
  readonly about: 'right' | 'up' | 'toward';
  /** More than -180, at most 180, never 0. */
  readonly degrees: number;
}

/**
 * The turns that bring a piece from one way of lying into another, one after the other: none, one or two. Every one of the
 * 24 ways to lay a block square comes about by two quarter or half turns at most; a cant takes one by its own angle.
 */
export function turnsBetween(from: BenchPose, to: BenchPose): readonly PieceTurn[] {
  const wanted = between(from, to);
  const single = oneTurn(wanted);
  if (single) return single;
  const found = AXES.flatMap((about) =>
    [90, -90, 180].flatMap((degrees): readonly PieceTurn[][] => {
      const first: PieceTurn = { about, degrees };
      const second = oneTurn(multiply(wanted, transposed(matrixOf(first))));
      return second ? [[first, ...second]] : [];
    }),
  );
  return found.sort((a, b) => effort(a) - effort(b))[0] ?? [];
}

const effort = (turns: readonly PieceTurn[]): number => turns.reduce((sum, { degrees }) => sum + Math.abs(degrees), 0);

/** Flat on the bed first: that needs no lifting. */
const AXES = ['up', 'toward', 'right'] as const;

/** Rows are where the operator's right, up and toward come from. */
type Matrix = readonly [Vector, Vector, Vector];

/** What turns the operator's view of a piece from one way of lying to another. */
const between = (from: BenchPose, to: BenchPose): Matrix => {
  const row = (own: Vector): Vector => [dot(own, from.right), dot(own, from.up), dot(own, from.toward)];
  return [row(to.right), row(to.up), row(to.toward)];
};

const column = (m: Matrix, i: 0 | 1 | 2): Vector => [m[0][i], m[1][i], m[2][i]];
const transposed = (m: Matrix): Matrix => [column(m, 0), column(m, 1), column(m, 2)];
const multiply = (a: Matrix, b: Matrix): Matrix => {
  const row = (r: Vector): Vector => [dot(r, column(b, 0)), dot(r, column(b, 1)), dot(r, column(b, 2))];
  return [row(a[0]), row(a[1]), row(a[2])];
};

const INDEX = { right: 0, up: 1, toward: 2 } as const;
/** The two directions that a turn about the third takes into each other, the first toward the second. */
const PLANE = { right: [1, 2], up: [2, 0], toward: [0, 1] } as const;

function matrixOf({ about, degrees }: PieceTurn): Matrix {
  const [c, s] = [cosine(degrees), cosine(degrees - 90)];
  if (about === 'right')
    return [
      [1, 0, 0],
      [0, c, -s],
      [0, s, c],
    ];
  if (about === 'up')
    return [
      [c, 0, s],
      [0, 1, 0],
      [-s, 0, c],
    ];
  return [
    [c, -s, 0],
    [s, c, 0],
    [0, 0, 1],
  ];
}

/** Of whole quarter turns exactly. */
const cosine = (degrees: number): number => {
  const quarters = (((degrees / 90) % 4) + 4) % 4;
  return Number.isInteger(quarters) ? ([1, 0, -1, 0][quarters] ?? 0) : Math.cos((degrees * Math.PI) / 180);
};

/** A turn that leaves one of the operator's directions where it is, or none at all; undefined if it is no such turn. */
function oneTurn(m: Matrix): readonly PieceTurn[] | undefined {
  for (const about of AXES) {
    const i = INDEX[about];
    if (Math.abs(m[i][i] - 1) > NEAR) continue;
    const [a, b] = PLANE[about];
    const turned = (Math.atan2(m[b][a], m[a][a]) * 180) / Math.PI;
    const whole = Math.round(turned);
    const degrees = Math.abs(whole - turned) < 1e-6 ? whole : turned;
    if (degrees === 0) return [];
    return [{ about, degrees: degrees === -180 ? 180 : degrees }];
  }
  return undefined;
}

/** Directions of cants are roots, taken as doubles. */
const NEAR = 1e-9;
