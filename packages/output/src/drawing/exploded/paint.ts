import { axisOf } from '@dryfit/engine';
import { type Element, element } from '../element.js';
import type { SceneAlong, SceneCut, ScenePart } from '../scene.js';
import { markOf } from '../shape.js';
import { placeIn, placeOut, wayIn, wayOut } from '../turn.js';
import { type Opening, openingIn } from './openings.js';
import type { Seen } from './order.js';
import { type Face, isWood, type Material } from './solid.js';
import { cross, dot, middle, minus, plus, times, type Vector } from './vector.js';
import { type Eye, type Flat, onPaper } from './view.js';

/** A part about to be painted. */
export interface Body {
  readonly part: ScenePart;
  readonly material: Material;
  readonly openings: readonly Opening[];
  /** How far it is pulled out from its place. */
  readonly shift: Vector;
}

/** What was found about a shape, at its worst. */
type Mark = (shape: string) => string | undefined;

type OnSheet = (p: Vector) => Flat;

/** How parts are painted. */
export interface Painting {
  readonly eye: Eye;
  readonly sheet: (p: Flat) => Flat;
  readonly mark: Mark;
  /** What is cut into the far sides of a part is drawn on it in hidden lines. */
  readonly hidden: boolean;
}

/** Parts painted from the farthest to the nearest; pieces of one part that follow each other are one group. */
export function paint(order: readonly Seen<Body>[], { eye, sheet, mark, hidden }: Painting): readonly Element[] {
  const drawn = new Set<string>();
  const groups: Element[] = [];
  for (let i = 0; i < order.length; ) {
    const { owner } = order[i] as Seen<Body>;
    let end = i;
    while (order[end]?.owner === owner) end += 1;
    const { shift } = owner;
    const { turn } = owner.part;
    const at: OnSheet = (p) => sheet(onPaper(eye, plus(placeOut(turn, p), shift)));
    const faces = order
      .slice(i, end)
      .flatMap(({ piece }) => piece.faces.map((face) => unshifted(face, owner)))
      .filter((face) => !isWood(owner.material, justOutside(face)));
    const looking = (way: 1 | -1) => faces.filter((face) => way * dot(wayOut(turn, face.normal), eye.toward) > EDGE_ON);
    const children = [
      ...looking(1).flatMap((face) => [
        ...surfaceOf(owner, face, at, drawn, mark),
        ...openingsIn(owner, face, at, drawn, mark, 'opening'),
      ]),
      ...(hidden ? looking(-1) : []).flatMap((face) => openingsIn(owner, face, at, drawn, mark, 'behind')),
    ];
    groups.push(once(drawn, owner.part, 'part', mark(owner.part.shape), children));
    i = end;
  }
  return groups;
}

/** A face as it lies in the part's own frame. */
const unshifted = (face: Face, { part: { turn }, shift }: Body): Face => ({
  ...face,
  normal: wayIn(turn, face.normal),
  corners: face.corners.map((p) => placeIn(turn, minus(p, shift))),
});

/** A group for a shape; where it has been drawn already, one that only says that it goes on. */
function once(
  drawn: Set<string>,
  shape: ScenePart | SceneCut | SceneAlong,
  kind: string,
  found: string | undefined,
  children: readonly Element[],
): Element {
  const again = drawn.has(shape.shape);
  drawn.add(shape.shape);
  return again
    ? element('g', { class: kind, 'data-again': shape.shape, 'aria-hidden': 'true' }, ...children)
    : markOf(shape, kind, found, children);
}

/** A face and its edges; of a notch or a bevel they are that cut's. */
function surfaceOf(body: Body, face: Face, at: OnSheet, drawn: Set<string>, mark: Mark): readonly Element[] {
  const fill = element('polygon', {
    class: `face across-${face.bevel ? 'bevel' : axisOf(face.side)}`,
    points: pointsOf(face.corners.map(at)),
  });
  const edges = element('path', { class: 'edge', d: edgesOf(body.material, face, at) });
  const walls = wallOf(body, face);
  return walls ? [once(drawn, walls, 'cut', mark(walls.shape), [fill, edges])] : [fill, edges];
}

/** What is cut into a face: open to the reader, or behind it. */
function openingsIn(
  body: Body,
  face: Face,
  at: OnSheet,
  drawn: Set<string>,
  mark: Mark,
  kind: 'opening' | 'behind',
): readonly Element[] {
  return body.openings.flatMap((opening) => {
    const seen = openingIn(face, opening);
    if (seen.length < 3) return [];
    const shape = element('polygon', { class: `${kind} ${opening.cut.kind}`, points: pointsOf(seen.map(at)) });
    return [once(drawn, opening.cut, 'cut', mark(opening.cut.shape), [shape])];
  });
}

/** The notch or bevel that a face is a wall of. */
function wallOf({ part }: Body, face: Face): SceneCut | undefined {
  if (face.bevel) return part.cuts.find(({ kind, surface }) => /^(bevel|cant)$/.test(kind) && surface === face.side);
  const outside = justOutside(face);
  return part.cuts.find(
    ({ kind, box }) =>
      kind === 'notch' && ([0, 1, 2] as const).every((i) => box.lo[i] < outside[i] && outside[i] < box.hi[i]),
  );
}

/** A place before the middle of a face; in wood where the face is only where a part was cut up for ordering. */
const justOutside = ({ corners, normal }: Face): Vector =>
  plus(times(corners.reduce(plus), 1 / corners.length), times(normal, JUST));

// A face seen more edge on than this shows nothing.
const EDGE_ON = 1e-9;

// Small against anything that is sawn, large against the rounding of doubles.
const JUST = 1e-3;

/** Edges of a face where the surface ends or turns; not those where a part was only cut up for ordering. */
function edgesOf(material: Material, face: Face, at: OnSheet): string {
  const centre = times(face.corners.reduce(plus), 1 / face.corners.length);
  return face.corners
    .flatMap((p, i) => {
      const q = face.corners[(i + 1) % face.corners.length] as Vector;
      const out = cross(face.normal, minus(q, p));
      const length = Math.hypot(...out);
      if (length < JUST) return [];
      const away = times(out, (dot(out, minus(centre, p)) > 0 ? -JUST : JUST) / length);
      const beyond = plus(middle(p, q), away);
      const under = isWood(material, minus(beyond, times(face.normal, JUST)));
      const over = isWood(material, plus(beyond, times(face.normal, JUST)));
      return under && !over ? [] : [`M${spaced(at(p))}L${spaced(at(q))}`];
    })
    .join('');
}

export const figure = (n: number): string => String(Math.round(n * 100) / 100 + 0);
const spaced = ([x, y]: Flat): string => `${figure(x)} ${figure(y)}`;
const pointsOf = (points: readonly Flat[]): string => points.map(([x, y]) => `${figure(x)},${figure(y)}`).join(' ');
