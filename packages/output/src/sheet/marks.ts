import {
  type Fit,
  type FittedPart,
  type Operation,
  type Orientation,
  opposite,
  type Reference,
  type Setting,
  type Side,
} from '@dryfit/engine';
import { partNames } from '../print/order.js';
import { surfaceName } from '../print/surface.js';
import type { Frame, Pen, Spot } from './page.js';

/** A direction on the paper. */
export type Way = 'left' | 'right' | 'up' | 'down';

/** Which side of a piece a drawing shows, and which sides lie along its four edges. */
export interface Seen {
  readonly face: Side;
  readonly edges: { readonly [W in Way]: Side };
}

const WAYS: readonly Way[] = ['left', 'right', 'up', 'down'];
const STEP: { readonly [W in Way]: Spot } = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] };

/** The loop, a cubic curve of Bézier that crosses itself, and the bend from its second end into the tail, a quadratic one. */
const LOOP: readonly Spot[] = along(18, (t) => [
  -0.5 * (1 - t) ** 3 + 5.4 * t * (1 - t) ** 2 - 5.4 * t ** 2 * (1 - t) + 0.5 * t ** 3,
  0.8 * (1 - t) ** 3 - 4.5 * t * (1 - t) ** 2 - 4.5 * t ** 2 * (1 - t) + 0.8 * t ** 3,
]);
const bend = (tail: number): readonly Spot[] =>
  along(6, (t) => [
    0.5 * (1 - t) ** 2 + 1.8 * t * (1 - t) + 0.9 * t ** 2,
    0.8 * (1 - t) ** 2 + 2.6 * t * (1 - t) + Math.max(1.5, tail) * t ** 2,
  ]).slice(1);

function along(steps: number, curve: (t: number) => Spot): readonly Spot[] {
  return Array.from({ length: steps + 1 }, (_, i) => curve(i / steps));
}

/**
 * The mark of a face side: a loop whose tail runs out to the face edge. An old custom of the bench (from memory, no source).
 * @param at the middle of the loop
 * @param way toward the face edge
 * @param tail how far from the middle the tail runs, mm
 * @param behind the face is the one underneath, so the loop is broken
 */
export function faceMark(pen: Pen, at: Spot, way: Way, size: number, tail: number, behind = false): void {
  const [ux, uy] = STEP[way];
  const spot = ([u, v]: Spot): Spot => [at[0] + (size / 2) * (v * ux - u * uy), at[1] + (size / 2) * (v * uy + u * ux)];
  const points = [...LOOP, ...bend((2 * tail) / size)].map(spot);
  points.slice(1).forEach((to, i) => {
    const from = points[i];
    if (from && !(behind && i % 3 === 2)) pen.line(from, to, 0.4);
  });
}

/**
 * The mark of a face edge: a vee within the piece, its point at the edge. An old custom of the bench (from memory, no source).
 * @param at the point of the vee, on the edge
 */
export function edgeMark(pen: Pen, at: Spot, way: Way, size: number): void {
  const [ux, uy] = STEP[way];
  const end = (side: 1 | -1): Spot => [
    at[0] - size * ux - side * 0.6 * size * uy,
    at[1] - size * uy + side * 0.6 * size * ux,
  ];
  pen.line(end(1), at, 0.45);
  pen.line(end(-1), at, 0.45);
}

/** What marks take that stand at an upper or lower edge, downward: with the loop, and the vee alone, mm. */
export const MARKS_DOWN = { both: 13, edge: 7 };
/** What marks take that stand at a left or right edge: half of it above their middle, half of it below, mm. */
export const MARKS_BESIDE = 12;

/**
 * Face side and face edge of a piece, marked as they are chalked on it, each with its word; a face that is seen from its
 * other side is drawn broken and called hidden. With several face edges each has its vee; the loop runs out to the first.
 * @param middle where along each edge its marks stand, 0 to 1 from the top or from the left
 */
export function orientationMarks(
  pen: Pen,
  piece: Frame,
  orientation: Orientation,
  seen: Seen,
  middle: number | { readonly [W in Way]?: number } = 0.5,
): void {
  const { faces } = orientation;
  const ways = markedWays(orientation, seen);
  const place = (way: Way) => onEdge(piece, way, (typeof middle === 'number' ? middle : middle[way]) ?? 0.5);
  const [first] = ways;
  const hasLoop = first !== undefined && faces.length > 0;
  for (const way of ways) {
    const at = place(way);
    const off = hasLoop && way === first ? 1 : 0;
    const vee: Spot = isUpright(way) ? [at[0] + 6 * off, at[1]] : [at[0], at[1] + 3.4 * off];
    edgeMark(pen, vee, way, 3);
    word(pen, vee, way, 'face edge', 3.4);
  }
  if (!hasLoop) return;
  const sides = faces.map(({ side }) => side);
  const behind = !sides.includes(seen.face);
  const both = sides.includes(seen.face) && sides.includes(opposite(seen.face));
  const at = place(first);
  const [ux, uy] = STEP[first];
  const from: Spot = isUpright(first) ? [at[0] - 6, at[1] - LOOP_TAIL * uy] : [at[0] - LOOP_TAIL * ux, at[1] - 3.4];
  faceMark(pen, from, first, LOOP_SIZE, LOOP_TAIL, behind);
  word(pen, from, first, both ? 'face side, both' : behind ? 'face side, hidden' : 'face side', 3.4);
}

/** Along which edges of a drawing the face edges of a piece lie: the first has the loop. */
export const markedWays = ({ edges }: Orientation, seen: Seen): readonly Way[] =>
  WAYS.filter((way) => edges.some(({ side }) => side === seen.edges[way]));

const isUpright = (way: Way): boolean => way === 'up' || way === 'down';

const SIZE = 2.8;
const LOOP_SIZE = 4;
const LOOP_TAIL = 5.5;

/** A word on the inner side of a mark. */
function word(pen: Pen, [x, y]: Spot, way: Way, text: string, off: number): void {
  if (way === 'right') pen.onGround(x - off, y + 0.8, text, SIZE, { align: 'end' });
  else if (way === 'left') pen.onGround(x + off, y + 0.8, text, SIZE);
  else pen.onGround(x, way === 'up' ? y + off + 2.2 : y - off - 0.5, text, SIZE, { align: 'middle' });
}

function onEdge({ x, y, width, height }: Frame, way: Way, middle: number): Spot {
  if (way === 'left') return [x, y + height * middle];
  if (way === 'right') return [x + width, y + height * middle];
  return [x + width * middle, way === 'up' ? y : y + height];
}

/**
 * What the drawing of a card shows (`drawPiece`): slots in a face from the front, with the end that they are measured from up
 * or down; slots in an edge or a mitred end from above, with that edge at the bottom. The datum lies at its fence's hand.
 */
export function seenOnCard({ half }: Pick<Operation, 'half'>, { pose }: Pick<Setting, 'pose'>, hand = half.hand): Seen {
  const reference = half.from.side;
  const isFace = half.role === 'face';
  const toward = pose.reference === 'up' ? reference : opposite(reference);
  const up = isFace ? toward : opposite(half.surface);
  return {
    face: isFace ? half.surface : toward,
    edges: {
      left: hand === 'left' ? half.datum : opposite(half.datum),
      right: hand === 'right' ? half.datum : opposite(half.datum),
      up,
      down: opposite(up),
    },
  };
}

/**
 * Face side and face edge in words: "face side: bottom face"; where there are several, with which parts the slots meet that
 * are measured from each. Nothing for a part that has no slots.
 */
export function orientationWords(
  fit: Pick<Fit, 'parts' | 'joints'>,
  part: FittedPart,
  { faces, edges, alongCant }: Orientation,
): readonly string[] {
  const lines = [told(fit, part, 'face side', faces), told(fit, part, 'face edge', edges)].filter((one) => one !== '');
  if (alongCant.length > 0) lines.push(`marked out along the cant: where it meets ${met(fit, part, alongCant)}`);
  return lines;
}

function told(fit: Pick<Fit, 'parts' | 'joints'>, part: FittedPart, what: string, list: readonly Reference[]): string {
  const [first] = list;
  if (!first) return '';
  if (list.length === 1) return `${what}: ${surfaceName(part, first.side)}`;
  const each = list.map(({ side, joints }) => `${surfaceName(part, side)} (where it meets ${met(fit, part, joints)})`);
  return `${what}s: ${each.join(', ')}`;
}

/** The parts that a part meets in joints. */
function met({ parts, joints }: Pick<Fit, 'parts' | 'joints'>, part: FittedPart, ids: readonly string[]): string {
  const others = joints
    .filter(({ id }) => ids.includes(id))
    .flatMap(({ entering, host }) => [entering, host])
    .filter((id) => id !== part.id);
  return partNames(parts.filter(({ id }) => others.includes(id)));
}
