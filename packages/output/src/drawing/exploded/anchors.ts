import { boundsOf, inside } from './flat.js';
import type { Seen } from './order.js';
import type { Body } from './paint.js';
import { dot, plus, times } from './vector.js';
import { type Eye, type Flat, onPaper } from './view.js';

/** Where the leader of a part's name ends: a place of it that can be seen, or its middle when none can. */
export interface Anchor {
  readonly body: Body;
  readonly at: Flat;
  readonly hidden: boolean;
}

// Tried in this order: the middle of a face first, then places nearer its borders.
const TRIES = [0.5, 0.25, 0.75, 0.1, 0.9];

export function anchorsOf(order: readonly Seen<Body>[], eye: Eye): readonly Anchor[] {
  const anchors = new Map<Body, Anchor>();
  order.forEach(({ owner, piece, hull }, i) => {
    if (anchors.get(owner)?.hidden === false) return;
    const above = order.slice(i + 1);
    const visible = (p: Flat) => !above.some((one) => one.owner !== owner && isIn(one, p));
    const faces = piece.faces
      .filter(({ normal }) => dot(normal, eye.toward) > 1e-9)
      .map(({ corners }) => corners.map((p) => onPaper(eye, p)))
      .sort((a, b) => areaOf(b) - areaOf(a));
    const found = faces.flatMap((corners) => placesIn(corners)).find(visible);
    const middle = onPaper(eye, times(piece.points.reduce(plus), 1 / piece.points.length));
    if (found) anchors.set(owner, { body: owner, at: found, hidden: false });
    else if (!anchors.has(owner) && hull.length > 0) anchors.set(owner, { body: owner, at: middle, hidden: true });
  });
  return [...anchors.values()];
}

function isIn({ bounds, hull }: Seen<Body>, p: Flat): boolean {
  return p[0] >= bounds.left && p[0] <= bounds.right && p[1] >= bounds.top && p[1] <= bounds.bottom && inside(hull, p);
}

/** Places across a face of four corners or more. */
function placesIn(corners: readonly Flat[]): readonly Flat[] {
  const [o, a, , b] = corners;
  if (!o || !a || !b) return [];
  const at = (s: number, t: number): Flat => [
    o[0] + (a[0] - o[0]) * s + (b[0] - o[0]) * t,
    o[1] + (a[1] - o[1]) * s + (b[1] - o[1]) * t,
  ];
  return TRIES.flatMap((s) => TRIES.map((t) => at(s, t)));
}

/** Twice the area of an outline (the shoelace formula). */
function areaOf(corners: readonly Flat[]): number {
  if (corners.length === 0) return 0;
  const { left, top } = boundsOf(corners);
  return Math.abs(
    corners.reduce((sum, [x, y], i) => {
      const [nx, ny] = corners[(i + 1) % corners.length] as Flat;
      return sum + (x - left) * (ny - top) - (nx - left) * (y - top);
    }, 0),
  );
}
