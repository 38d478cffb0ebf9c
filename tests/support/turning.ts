import { dot, type Vector } from './vectors.js';

/** Rows of a rotation. */
export type Turn = readonly [Vector, Vector, Vector];

export const turned = (turn: Turn, v: Vector): Vector => [dot(turn[0], v), dot(turn[1], v), dot(turn[2], v)];

/** A quarter turn about one of the axes, as a hand turns a panel over. */
const QUARTERS: readonly Turn[] = [
  [
    [1, 0, 0],
    [0, 0, -1],
    [0, 1, 0],
  ],
  [
    [0, 0, 1],
    [0, 1, 0],
    [-1, 0, 0],
  ],
  [
    [0, -1, 0],
    [1, 0, 0],
    [0, 0, 1],
  ],
];

/** First `a`, then `b`. */
export function followedBy(a: Turn, b: Turn): Turn {
  const columns = ([0, 1, 2] as const).map((i): Vector => [a[0][i], a[1][i], a[2][i]]);
  return b.map((row) => columns.map((column) => dot(row, column))) as unknown as Turn;
}

/** Every way a box can be put down square: all that quarter turns lead to, and so never a mirror image. */
export const ALL_TURNS: readonly Turn[] = (() => {
  const still: Turn = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const found = new Map([[JSON.stringify(still), still]]);
  for (const turn of found.values()) {
    for (const quarter of QUARTERS) {
      const next = followedBy(turn, quarter).map((row) => row.map((n) => n + 0)) as unknown as Turn;
      const key = JSON.stringify(next);
      if (!found.has(key)) found.set(key, next);
    }
  }
  return [...found.values()];
})();

/** Half a right angle about one axis, one way or the other. */
export function eighth(axis: 0 | 1 | 2, way: 1 | -1): Turn {
  const [c, s] = [Math.SQRT1_2, way * Math.SQRT1_2];
  const rows: [number, number, number][] = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  const [j, k] = [(axis + 1) % 3, (axis + 2) % 3];
  (rows[axis] as number[])[axis] = 1;
  (rows[j] as number[])[j] = c;
  (rows[j] as number[])[k] = -s;
  (rows[k] as number[])[j] = s;
  (rows[k] as number[])[k] = c;
  return rows as unknown as Turn;
}
