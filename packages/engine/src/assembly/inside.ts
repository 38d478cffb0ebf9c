import type { HalfSpace } from '../solids/body.js';
import { largest } from './simplex.js';

/** What is thinner than twice this is a film, not a body, mm. */
const FILM = 1e-6;

/** Whether there is a ball of any size within all the planes: its middle and radius are sought, the largest it may be. */
export function hasInside(spaces: readonly HalfSpace[]): boolean {
  const far = 1 + 2 * Math.max(...spaces.map(({ offset }) => Math.abs(offset)));
  const rows: (readonly number[])[] = [];
  const limits: number[] = [];
  for (const { normal, offset } of spaces) {
    const length = Math.hypot(normal[0], normal[1], normal[2]);
    if (length === 0) {
      if (offset < FILM) return false;
      continue;
    }
    // The radius is counted from −far, so that the origin with no radius at all satisfies every row.
    rows.push([normal[0] / length, normal[1] / length, normal[2] / length, 1]);
    limits.push(offset / length + far);
  }
  rows.push([0, 0, 0, 1]);
  limits.push(2 * far);
  const found = largest([0, 0, 0, 1], rows, limits);
  return found !== undefined && (found[3] as number) - far > FILM;
}
