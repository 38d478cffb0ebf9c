import { type Attitude, type Fit, type FittedPart, markedTogether, orientationOf } from '@dryfit/engine';
import type { Seen } from './marks.js';
import type { Frame, Pen, Spot } from './page.js';

/**
 * How parts lie to be marked, and so how they are drawn on labels: flat, as if you looked at them from the left of the
 * cabinet (uprights), from its front (facing parts), or down on it from the front (level parts).
 */
export const LAID: { readonly [A in Attitude]: Seen } = {
  upright: { face: 'left', edges: { up: 'top', down: 'bottom', left: 'rear', right: 'front' } },
  level: { face: 'top', edges: { up: 'rear', down: 'front', left: 'left', right: 'right' } },
  facing: { face: 'front', edges: { up: 'top', down: 'bottom', left: 'left', right: 'right' } },
};

/** The order in which parts that belong together are laid side by side, from your left to your right; and where it begins. */
export const IN_ORDER: { readonly [A in Attitude]: string } = {
  upright: 'from the left one to the right one',
  level: 'from the lowest to the highest',
  facing: 'from the front one to the rear one',
};
export const COUNTED: { readonly [A in Attitude]: string } = {
  upright: 'from the left',
  level: 'from the bottom',
  facing: 'from the front',
};

/** Most parts that one triangle is drawn across; of more, each so many have their own. */
const MOST = 5;

/** Rows of parts that are laid side by side to be marked, in their order; a set into which nothing is milled needs no marks. */
export function laidRows(fit: Pick<Fit, 'parts' | 'joints'>): readonly (readonly FittedPart[])[] {
  const partOf = new Map(fit.parts.map((part) => [part.id, part]));
  const isMilled = (part: FittedPart): boolean => {
    const { edges, alongCant } = orientationOf(fit, part);
    return edges.length > 0 || alongCant.length > 0;
  };
  return markedTogether(fit)
    .map(({ parts }) => parts.flatMap((id) => partOf.get(id) ?? []))
    .filter((parts) => parts.some(isMilled))
    .flatMap((parts) =>
      Array.from({ length: Math.ceil(parts.length / MOST) }, (_, i) => parts.slice(i * MOST, (i + 1) * MOST)),
    );
}

/** How much wider than tall a part is as it is laid; undefined while its size is not fixed. */
export function ratioOf({ attitude, extent }: Pick<FittedPart, 'attitude' | 'extent'>): number | undefined {
  const wide = attitude === 'upright' ? extent.y : extent.x;
  const tall = attitude === 'level' ? extent.y : extent.z;
  return wide && tall && tall.sign() > 0 ? wide.toNumber() / tall.toNumber() : undefined;
}

/**
 * The cabinetmaker's triangle over parts that lie side by side, its point away from you: no part can be exchanged or turned
 * without breaking it. An old custom of the bench (from memory, no source).
 * @param share which stretch of the whole triangle's width is drawn into the outline, 0 to 1; all of it unless told
 */
export function triangle(
  pen: Pen,
  { x, y, width, height }: Frame,
  [from, to]: readonly [number, number] = [0, 1],
  stroke = 0.7,
): void {
  const [top, base] = [y + height * 0.08, y + height * 0.9];
  const [inset, middle] = [0.06, 0.5];
  const wide = width / (to - from);
  const spot = (across: number, down: number): Spot => [x + (across - from) * wide, down];
  /** Height of a slanted side at a place across. */
  const down = (across: number) =>
    base - ((base - top) * (middle - Math.abs(across - middle) - inset)) / (middle - inset);
  const [left, right] = [Math.max(from, inset), Math.min(to, 1 - inset)];
  pen.line(spot(left, base), spot(right, base), stroke);
  if (left < middle) {
    const end = Math.min(right, middle);
    pen.line(spot(left, down(left)), spot(end, down(end)), stroke);
  }
  if (right > middle) {
    const start = Math.max(left, middle);
    pen.line(spot(start, down(start)), spot(right, down(right)), stroke);
  }
}
