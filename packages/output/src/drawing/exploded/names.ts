import { type Element, element } from '../element.js';
import type { ScenePart } from '../scene.js';
import { figure } from './paint.js';
import type { Flat } from './view.js';

/** A name to be written beside the picture, with a leader to a place in it. */
export interface Name {
  readonly part: ScenePart;
  readonly words: string;
  readonly at: Flat;
  readonly hidden: boolean;
}

/** Room for the picture between two columns of names, on paper. */
export interface Columns {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Least distance from one name to the next. */
export const NAME_HEIGHT = 20;
const GAP = 10;

/** Names in two columns, each level with what it names as far as there is room; leaders of a column never cross. */
export function namesBeside(names: readonly Name[], columns: Columns): readonly Element[] {
  const across = [...names].sort((a, b) => a.at[0] - b.at[0]);
  const half = Math.ceil(across.length / 2);
  return [
    ...column(across.slice(0, half), columns, columns.left, 'end'),
    ...column(across.slice(half), columns, columns.right, 'start'),
  ];
}

function column(
  names: readonly Name[],
  { top, bottom }: Columns,
  x: number,
  anchor: 'start' | 'end',
): readonly Element[] {
  const out = anchor === 'end' ? -1 : 1;
  const places = spaced(
    names.map(({ at }) => at[1]),
    top,
    bottom,
  );
  const levels = [...places].sort((a, b) => a - b);
  const taken = untangled(names, levels, x - out * GAP);
  return taken.map(({ part, words, at, hidden }, i) => {
    const y = levels[i] as number;
    const line = `M${figure(x - out * 4)} ${figure(y)}L${figure(x - out * GAP)} ${figure(y)}L${figure(at[0])} ${figure(at[1])}`;
    return element(
      'g',
      { class: hidden ? 'name hidden' : 'name', 'data-names': part.shape },
      element('path', { class: 'leader', d: line }),
      element('circle', { class: 'dot', cx: figure(at[0]), cy: figure(at[1]), r: 2 }),
      element('text', { x: figure(x), y: figure(y + 4), 'text-anchor': anchor }, words),
    );
  });
}

/** Which name takes which level, so that no two leaders cross: swapped until none do, which shortens them each time. */
function untangled(names: readonly Name[], levels: readonly number[], x: number): readonly Name[] {
  const order = [...names].sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0]);
  for (let again = true, rounds = 0; again && rounds < order.length; rounds += 1) {
    again = false;
    for (let i = 0; i < order.length; i += 1) {
      for (let j = i + 1; j < order.length; j += 1) {
        const [a, b] = [order[i] as Name, order[j] as Name];
        if (!crossing(a.at, [x, levels[i] as number], b.at, [x, levels[j] as number])) continue;
        order[i] = b;
        order[j] = a;
        again = true;
      }
    }
  }
  return order;
}

function crossing(a: Flat, b: Flat, c: Flat, d: Flat): boolean {
  const side = (o: Flat, p: Flat, q: Flat) => Math.sign((p[0] - o[0]) * (q[1] - o[1]) - (p[1] - o[1]) * (q[0] - o[0]));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Levels as near as can be to those wanted, in their order, no two nearer than a name is high. */
function spaced(wanted: readonly number[], top: number, bottom: number): readonly number[] {
  const sorted = [...wanted].sort((a, b) => a - b);
  const placed: number[] = [];
  for (const y of sorted) placed.push(Math.max(y, (placed.at(-1) ?? top - NAME_HEIGHT) + NAME_HEIGHT));
  let limit = bottom;
  for (let i = placed.length - 1; i >= 0; i -= 1) {
    placed[i] = Math.min(placed[i] as number, limit);
    limit = (placed[i] as number) - NAME_HEIGHT;
  }
  return placed;
}
