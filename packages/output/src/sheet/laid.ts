import type { Attitude } from '@dryfit/engine';
import type { Outline, Seen } from './marks.js';
import type { Pen, Spot } from './page.js';

/**
 * How parts lie to be marked, and so how they are drawn on labels: flat, as if you looked at them from the left of the
 * cabinet (uprights), from its front (facing parts), or down on it from the front (level parts).
 */
export const LAID: { readonly [A in Attitude]: Seen } = {
  upright: { face: 'left', edges: { up: 'top', down: 'bottom', left: 'rear', right: 'front' } },
  level: { face: 'top', edges: { up: 'rear', down: 'front', left: 'left', right: 'right' } },
  facing: { face: 'front', edges: { up: 'top', down: 'bottom', left: 'left', right: 'right' } },
};

/** The order in which parts that belong together are laid side by side, from your left to your right. */
export const IN_ORDER: { readonly [A in Attitude]: string } = {
  upright: 'from the left one to the right one',
  level: 'from the lowest to the highest',
  facing: 'from the front one to the rear one',
};

/**
 * The cabinetmaker's triangle over parts that lie side by side, its point away from you: no part can be exchanged or turned
 * without breaking it. An old custom of the bench (from memory, no source).
 * @param share which stretch of the whole triangle's width is drawn into the outline, 0 to 1; all of it unless told
 */
export function triangle(
  pen: Pen,
  { x, y, width, height }: Outline,
  [from, to]: readonly [number, number] = [0, 1],
): void {
  const [top, base] = [y + height * 0.08, y + height * 0.9];
  const [inset, middle] = [0.06, 0.5];
  const wide = width / (to - from);
  const spot = (across: number, down: number): Spot => [x + (across - from) * wide, down];
  /** Height of a slanted side at a place across. */
  const down = (across: number) =>
    base - ((base - top) * (middle - Math.abs(across - middle) - inset)) / (middle - inset);
  const [left, right] = [Math.max(from, inset), Math.min(to, 1 - inset)];
  pen.line(spot(left, base), spot(right, base), STROKE);
  if (left < middle) {
    const end = Math.min(right, middle);
    pen.line(spot(left, down(left)), spot(end, down(end)), STROKE);
  }
  if (right > middle) {
    const start = Math.max(left, middle);
    pen.line(spot(start, down(start)), spot(right, down(right)), STROKE);
  }
}

const STROKE = 0.7;
