import type { FittedPart } from '../../fit/fit.js';
import { list, type Text } from '../../fit/text.js';
import { type Axis, dimensionOf } from '../../spec/sides.js';
import type { PartId } from '../../spec/spec.js';
import type { CheckContext } from '../check.js';
import { byId, once } from './alike.js';

/** Most names that a message lists. */
const MOST = 5;

/** Parts by name, all like parts of one name together: "shelf", "lshelf (all 3) and divider". */
export function partNames(context: CheckContext, parts: readonly PartId[]): Text {
  const names: string[] = [];
  const wanted = new Set(parts);
  for (const id of once(parts)) {
    const kind = context.part(id)?.kind ?? id;
    const alike = context.fit.parts.filter((part) => part.kind === kind);
    if (alike.length > 1 && alike.every((part) => wanted.has(part.id))) {
      const name = `${kind} (all ${alike.length})`;
      if (!names.includes(name)) names.push(name);
    } else names.push(id);
  }
  return some(names);
}

/** The parts by their ids, so that the order of the lines in a spec never shows. */
export const partsInOrder = (context: CheckContext): readonly FittedPart[] =>
  [...context.fit.parts].sort((a, b) => byId(a.id, b.id));

/** Names with words between them; of very many only the first, and how many more. */
export function some(names: readonly string[]): Text {
  const left = names.length - MOST;
  return left > 1 ? list([...names.slice(0, MOST), `${left} more`]) : list(names);
}

/** "width", "depth" or "height". */
export const extentWord = (axis: Axis): string => dimensionOf(axis);

/** Texts one after the other, the same sign between each two. */
export const joined = (texts: readonly Text[], between: string): Text =>
  texts.flatMap((text, i) => (i === 0 ? text : [between, ...text]));

/** How a part moves along an axis. */
export const MOVES: Record<Axis, string> = { x: 'left or right', y: 'to front or rear', z: 'up or down' };
