import type { Vector } from '../geometry/vector.js';
import type { Item, Piece } from './assembly.js';

/** Item a may go no farther along −way than it is, because of b. */
export interface Touch {
  readonly a: number;
  readonly b: number;
  readonly way: Vector;
}

/** What is nearer than this counts as touching, mm: the play of a panel in its groove is no room to move in. */
const PLAY = 3;

const UNIT: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Faces of items that touch, square ones only: a slanting pair has a slope of its own. */
export function* touching(items: readonly Item[]): Generator<Touch> {
  for (let a = 0; a < items.length; a++) {
    for (let b = a + 1; b < items.length; b++) {
      for (const p of items[a]?.pieces ?? []) for (const q of items[b]?.pieces ?? []) yield* touch(a, b, p, q);
    }
  }
}

function* touch(a: number, b: number, p: Piece, q: Piece): Generator<Touch> {
  for (const i of [0, 1, 2] as const) {
    const [j, k] = [((i + 1) % 3) as 0 | 1 | 2, ((i + 2) % 3) as 0 | 1 | 2];
    if (p.hi[j] <= q.lo[j] || q.hi[j] <= p.lo[j] || p.hi[k] <= q.lo[k] || q.hi[k] <= p.lo[k]) continue;
    const way = UNIT[i] as Vector;
    if (near(q.hi[i], p.lo[i])) yield { a, b, way };
    if (near(p.hi[i], q.lo[i])) yield { a: b, b: a, way };
  }
}

const near = (below: number, above: number): boolean => above >= below && above - below < PLAY;
