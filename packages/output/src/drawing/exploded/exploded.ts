import { type Element, element } from '../element.js';
import type { Scene, SceneBox } from '../scene.js';
import { worstOf } from '../shape.js';
import { warningLines } from '../warning.js';
import { anchorsOf } from './anchors.js';
import { boundsOf } from './flat.js';
import { NAME_HEIGHT, namesBeside } from './names.js';
import { openingsOf } from './openings.js';
import { backToFront, type Placed } from './order.js';
import { type Body, figure, paint } from './paint.js';
import { materialOf, type Piece, piecesOf } from './solid.js';
import { boxAround, moved, spread } from './spread.js';
import { plus, times, type Vector } from './vector.js';
import { type Eye, eyeOf, type Flat, onPaper, type View } from './view.js';
import { wordsAround } from './words.js';

/** Size of the sheet; names stand left and right of the picture, and the sheet grows for many of them. */
const WIDTH = 960;
const HEIGHT = 640;
const COLUMN = 170;
const HEAD = 44;
const FOOT = 44;

/** A cabinet with its parts pulled apart, seen in parallel projection; what is behind is covered. */
export function exploded(scene: Scene, view: View): Element {
  const eye = eyeOf(view);
  const parts = spread(scene, view.apart);
  const bodies = parts.map(
    ({ part, box, shift }): Body => ({
      part,
      shift,
      material: materialOf(part, box),
      openings: openingsOf(part, part.box ?? box),
    }),
  );
  const order = backToFront(bodies.flatMap(placed), eye);
  const warnings = warningLines(scene);
  const head = HEAD + warnings.length * 18;
  const rows = Math.ceil(bodies.length / 2) * NAME_HEIGHT;
  const height = Math.max(HEIGHT, head + rows + FOOT);
  const room = { left: COLUMN, right: WIDTH - COLUMN, top: head, bottom: height - FOOT };
  const whole = boxAround(parts.map(({ box, shift }) => moved(box, shift)));
  const sheet = fitted(whole, eye, room);
  const worst = worstOf(scene);
  const drawn = order.flatMap(({ hull }) => hull.map(sheet));
  const lowest = drawn.length > 0 ? boundsOf(drawn).bottom : (room.top + room.bottom) / 2;
  const names = anchorsOf(order, eye).map(({ body, at, hidden }) => ({
    part: body.part,
    words: named(body.part.part, worst(body.part.shape)),
    at: sheet(at),
    hidden,
  }));
  return element(
    'svg',
    {
      class: 'dryfit-drawing exploded',
      viewBox: `0 0 ${WIDTH} ${figure(height)}`,
      role: 'group',
      'aria-label': `${scene.title}, exploded`,
    },
    element('title', {}, `${scene.title}, exploded`),
    element('g', { class: 'heading' }, ...headingOf(scene, warnings)),
    element('g', { class: 'parts' }, ...paint(order, eye, sheet, worst)),
    element('g', { class: 'sides' }, ...wordsAround(whole, eye, sheet, Math.min(lowest, room.bottom), room)),
    element(
      'g',
      { class: 'names', 'aria-hidden': 'true' },
      ...namesBeside(names, { left: COLUMN - 12, right: WIDTH - COLUMN + 12, top: head + 10, bottom: height - FOOT }),
    ),
  );
}

function placed(body: Body): readonly Placed<Body>[] {
  const slants = body.material.bevels.map(({ normal }) => normal);
  return piecesOf(body.material).map((piece) => ({ owner: body, piece: movedPiece(piece, body.shift), slants }));
}

const movedPiece = ({ faces, points }: Piece, by: Vector): Piece => ({
  faces: faces.map((face) => ({ ...face, corners: face.corners.map((p) => plus(p, by)) })),
  points: points.map((p) => plus(p, by)),
});

function named(name: string, worst: string | undefined): string {
  return worst === undefined || worst === 'info' ? name : `${name} (${worst})`;
}

function headingOf(scene: Scene, warnings: readonly string[]): readonly Element[] {
  const [x, y, z] = scene.outside ?? [];
  const size = x === undefined ? '' : `, ${x} wide, ${z} high, ${y} deep (${scene.units})`;
  return [
    element('text', { class: 'title', x: 16, y: 26 }, `${scene.title}${size}`),
    ...warnings.map((line, i) => element('text', { class: 'warning', x: 16, y: 46 + i * 18 }, line)),
  ];
}

/**
 * Onto the sheet, as large as goes in whichever way the cabinet is turned: by the circle round its plan, so that
 * it does not grow and shrink while it is being turned.
 */
function fitted(
  box: SceneBox,
  eye: Eye,
  room: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
): (p: Flat) => Flat {
  const size = plus(box.hi, times(box.lo, -1));
  const across = Math.hypot(size[0], size[1]);
  const level = Math.abs(eye.toward[2]);
  const upright = Math.sqrt(Math.max(0, 1 - level * level));
  const high = size[2] * upright + across * level;
  const scale = Math.min(
    (room.right - room.left - 24) / Math.max(across, 1),
    (room.bottom - room.top - 24) / Math.max(high, 1),
  );
  const centre = onPaper(eye, times(plus(box.lo, box.hi), 0.5));
  const middle: Flat = [(room.left + room.right) / 2, (room.top + room.bottom) / 2];
  return ([x, y]) => [middle[0] + (x - centre[0]) * scale, middle[1] + (y - centre[1]) * scale];
}
