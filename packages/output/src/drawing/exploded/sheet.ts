import type { SceneBox } from '../scene.js';
import type { Bounds } from './flat.js';
import { plus, times } from './vector.js';
import { type Eye, type Flat, onPaper } from './view.js';

/** From what is seen, mm, to the paper. */
export type ToSheet = (p: Flat) => Flat;

const BORDER = 12;

/**
 * Onto the sheet, as large as goes in whichever way the cabinet is turned: by the circle round its plan, so that
 * it does not grow and shrink while it is being turned.
 */
export function steadily(box: SceneBox, eye: Eye, room: Bounds): ToSheet {
  const size = plus(box.hi, times(box.lo, -1));
  const across = Math.hypot(size[0], size[1]);
  const level = Math.abs(eye.toward[2]);
  const upright = Math.sqrt(Math.max(0, 1 - level * level));
  const centre = onPaper(eye, times(plus(box.lo, box.hi), 0.5));
  return scaled(centre, across, size[2] * upright + across * level, room);
}

/** Onto the sheet, as large as goes in. */
export const tightly = ({ left, right, top, bottom }: Bounds, room: Bounds): ToSheet =>
  scaled([(left + right) / 2, (top + bottom) / 2], right - left, bottom - top, room);

function scaled(centre: Flat, wide: number, high: number, room: Bounds): ToSheet {
  const scale = Math.min(
    (room.right - room.left - 2 * BORDER) / Math.max(wide, 1e-6),
    (room.bottom - room.top - 2 * BORDER) / Math.max(high, 1e-6),
  );
  const [x0, y0] = [(room.left + room.right) / 2, (room.top + room.bottom) / 2];
  return ([x, y]) => [x0 + (x - centre[0]) * scale, y0 + (y - centre[1]) * scale];
}
