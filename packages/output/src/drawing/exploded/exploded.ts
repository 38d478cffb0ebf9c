import { type Element, element } from '../element.js';
import { type Patch, textWidth, wordsIn } from '../elevation/ink.js';
import { drawMarks } from '../marked.js';
import type { Scene, SceneMark } from '../scene.js';
import { worstOf } from '../shape.js';
import { placeOut, wayOut } from '../turn.js';
import { anchorsOf } from './anchors.js';
import { boundsOf } from './flat.js';
import { HEAD_LINE, headingOf } from './heading.js';
import { NAME_HEIGHT, namesBeside } from './names.js';
import { openingsOf } from './openings.js';
import { backToFront, type Placed } from './order.js';
import { type Body, figure, paint } from './paint.js';
import { steadily, tightly } from './sheet.js';
import { materialOf, type Piece, piecesOf } from './solid.js';
import { boxAround, moved, type SpreadPart, spread, standing } from './spread.js';
import { plus, type Vector } from './vector.js';
import { eyeOf, type Flat, onPaper, type View } from './view.js';
import { wordsAround } from './words.js';

/** Size of the sheet; names stand left and right of the picture, and the sheet grows for many of them. */
const WIDTH = 960;
const HEIGHT = 640;
const COLUMN = 170;
const HEAD = 44;
const FOOT = 44;

export interface ExplodedOptions {
  /** As large as the sheet allows; unless said, only as large as it may stay while the cabinet is being turned. */
  readonly tight?: boolean | undefined;
  /** Without what is cut into the sides of parts that look away from the reader, drawn in hidden lines otherwise. */
  readonly visibleOnly?: boolean | undefined;
  /** Size of the sheet, in the measure in which its words are 14 high; it grows for many names. 960 × 640 unless said. */
  readonly size?: { readonly width: number; readonly height: number } | undefined;
}

/** A cabinet with its parts pulled apart, seen in parallel projection; what is behind is covered. */
export function exploded(scene: Scene, view: View, options: ExplodedOptions = {}): Element {
  const { eye, bodies, order, whole } = arranged(scene, view);
  const worst = worstOf(scene);
  const { width, height: least } = options.size ?? { width: WIDTH, height: HEIGHT };
  const words = bodies.map(({ part }) => nameOf(part.part, worst(part.shape)));
  const column = options.size ? columnFor(words, width) : COLUMN;
  const heading = headingOf(scene, width);
  const head = HEAD + (heading.length - 1) * HEAD_LINE;
  const rows = Math.ceil(bodies.length / 2) * NAME_HEIGHT;
  const height = Math.max(least, head + rows + FOOT);
  const room = { left: column, right: width - column, top: head, bottom: height - FOOT };
  const seen = order.flatMap(({ hull }) => hull);
  const sheet = options.tight && seen.length > 0 ? tightly(boundsOf(seen), room) : steadily(whole, eye, room);
  const drawn = boundsOf(seen.length > 0 ? seen.map(sheet) : [[width / 2, height / 2]]);
  const names = anchorsOf(order, eye).map(({ body, at, hidden }) => ({
    part: body.part,
    words: nameOf(body.part.part, worst(body.part.shape)),
    at: sheet(at),
    hidden,
  }));
  const named = namesBeside(names, {
    left: Math.max(column - 12, drawn.left - 40),
    right: Math.min(width - column + 12, drawn.right + 40),
    top: head + 10,
    bottom: height - FOOT,
  });
  const sides = wordsAround(whole, eye, sheet, Math.min(drawn.bottom, room.bottom), room);
  return element(
    'svg',
    {
      class: 'dryfit-drawing exploded',
      viewBox: `0 0 ${figure(width)} ${figure(height)}`,
      role: 'group',
      'aria-label': `${scene.title}, exploded`,
    },
    element('title', {}, `${scene.title}, exploded`),
    element('g', { class: 'heading' }, ...heading),
    element('g', { class: 'parts' }, ...paint(order, { eye, sheet, mark: worst, hidden: !options.visibleOnly })),
    ...marksOn(scene, bodies, (p) => sheet(onPaper(eye, p)), wordsIn([...heading, ...sides, ...named])),
    element('g', { class: 'sides' }, ...sides),
    element('g', { class: 'names' }, ...named),
  );
}

/** What is to be painted, from the farthest to the nearest, and the box around it all. */
export function arranged(scene: Scene, view: View, parts: readonly SpreadPart[] = spread(scene, view.apart)) {
  const eye = eyeOf(view);
  const bodies = parts.map(
    ({ part, box, shift }): Body => ({
      part,
      shift,
      material: materialOf(part, box),
      openings: openingsOf(part, part.box ?? box),
    }),
  );
  const whole = boxAround(parts.map((one) => moved(standing(one), one.shift)));
  return { eye, bodies, order: backToFront(bodies.flatMap(placed), eye), whole };
}

function placed(body: Body): readonly Placed<Body>[] {
  const { turn } = body.part;
  const own = body.material.bevels.map(({ normal }) => normal);
  const slants = (turn ? [...own, ...ACROSS] : own).map((normal) => wayOut(turn, normal));
  return piecesOf(body.material).map((piece) => ({ owner: body, piece: placedPiece(piece, body), slants }));
}

/** Directions of a turned part's faces and ends in its own frame. */
const ACROSS: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
];

function placedPiece({ faces, points }: Piece, { part: { turn }, shift }: Body): Piece {
  const at = (p: Vector): Vector => plus(placeOut(turn, p), shift);
  return {
    faces: faces.map((face) => ({ ...face, normal: wayOut(turn, face.normal), corners: face.corners.map(at) })),
    points: points.map(at),
  };
}

/** Marked places, each where its part has been pulled to; painted over all, since they mostly lie within the wood. */
function marksOn(
  { marks = [] }: Scene,
  bodies: readonly Body[],
  onSheet: (p: Vector) => Flat,
  written: readonly Patch[],
): readonly Element[] {
  const shifts = new Map(bodies.map(({ part, shift }) => [part.part, shift]));
  const shiftOf = ({ parts: [part = ''] }: SceneMark): Vector | undefined => shifts.get(part);
  const here = marks.filter((mark) => shiftOf(mark));
  if (here.length === 0) return [];
  const at = (mark: SceneMark, end: 0 | 1): Flat => onSheet(plus(mark.ends[end], shiftOf(mark) ?? [0, 0, 0]));
  return [element('g', { class: 'marks' }, ...drawMarks(here, at, written))];
}

function nameOf(name: string, worst: string | undefined): string {
  return worst === undefined || worst === 'info' ? name : `${name} (${worst})`;
}

/** Room for the names on either side: for the longest of them, but not so much that nothing is left for the picture. */
function columnFor(names: readonly string[], width: number): number {
  const longest = Math.max(0, ...names.map((name) => textWidth(name)));
  return Math.min(COLUMN, width * 0.3, longest + 30);
}
