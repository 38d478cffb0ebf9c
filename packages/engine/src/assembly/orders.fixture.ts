/**
 * An answer found another way, for tests: parts are sets of cells, and every way to divide every set of parts is
 * tried, cell by cell, along every way. Shares nothing with what it is compared with.
 */

export type Cell = readonly [number, number, number];

export interface Puzzle {
  /** Cells of each part, whole numbers; a part may be in several pieces. */
  readonly parts: readonly (readonly Cell[])[];
  readonly bonds: readonly {
    readonly entering: number;
    readonly host: number;
    /** The way the entering part leaves: one of the six. */
    readonly way: Cell;
    /** In cells. */
    readonly length: number;
  }[];
  /** Pairs that a joint brings together, whatever holds them. */
  readonly links: readonly (readonly [number, number])[];
}

const WAYS: readonly Cell[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

/** Farther than any part is from another. */
const FAR = 12;

/** Whether all parts can be brought together, by any order of any groups, in one straight move each or in two. */
export function goesTogether(puzzle: Puzzle): boolean {
  const known = new Map<number, boolean>();
  const at = puzzle.parts.map((cells) => new Set(cells.map(String)));
  const goes = (set: number): boolean => {
    if ((set & (set - 1)) === 0) return true;
    const before = known.get(set);
    if (before !== undefined) return before;
    let found = false;
    for (let one = (set - 1) & set; one > 0 && !found; one = (one - 1) & set) {
      const other = set & ~one;
      if (!(one & lowest(set))) continue;
      found = (unlinked(one, other) || leaves(one, other)) && goes(one) && goes(other);
    }
    known.set(set, found);
    return found;
  };
  const unlinked = (one: number, other: number): boolean =>
    puzzle.links.every(([a, b]) => !((has(one, a) && has(other, b)) || (has(one, b) && has(other, a))));
  const leaves = (one: number, other: number): boolean => moves(one, other) || moves(other, one);
  const moves = (moving: number, staying: number): boolean =>
    WAYS.some((way) => {
      if (!lets(moving, staying, way, 0, way)) return false;
      if (free(moving, staying, [0, 0, 0], way, FAR)) return true;
      return lengths(way).some((length) => {
        if (!free(moving, staying, [0, 0, 0], way, length)) return false;
        const gone: Cell = [way[0] * length, way[1] * length, way[2] * length];
        return WAYS.some(
          (next) =>
            square(way, next) && lets(moving, staying, next, length, way) && free(moving, staying, gone, next, FAR),
        );
      });
    });
  /** Whether no bond between them holds along a way, when they have gone so far along another. */
  const lets = (moving: number, staying: number, way: Cell, gone: number, along: Cell): boolean =>
    puzzle.bonds.every(({ entering, host, way: own, length }) => {
      const [out, back] = [has(moving, entering) && has(staying, host), has(moving, host) && has(staying, entering)];
      if (!out && !back) return true;
      const mine: Cell = out ? own : [-own[0] || 0, -own[1] || 0, -own[2] || 0];
      if (gone > 0 && String(mine) === String(along) && gone >= length) return true;
      return String(mine) === String(way);
    });
  const free = (moving: number, staying: number, from: Cell, way: Cell, steps: number): boolean => {
    for (let a = 0; a < at.length; a++) {
      if (!has(moving, a)) continue;
      for (const [x, y, z] of puzzle.parts[a] ?? []) {
        for (let t = 1; t <= steps; t++) {
          const cell = String([x + from[0] + way[0] * t, y + from[1] + way[1] * t, z + from[2] + way[2] * t]);
          if (at.some((cells, b) => has(staying, b) && cells.has(cell))) return false;
        }
      }
    }
    return true;
  };
  /** How far joined parts stand in each other, and how far bonds reach. */
  const lengths = (way: Cell): readonly number[] => {
    const axis = way.findIndex((k) => k !== 0) as 0 | 1 | 2;
    const found = new Set(puzzle.bonds.filter((bond) => bond.way[axis] !== 0).map(({ length }) => length));
    for (const [a, b] of puzzle.links) {
      const [p, q] = [a, b].map((part) => (puzzle.parts[part] ?? []).map((cell) => cell[axis]));
      const depth =
        1 +
        Math.min(Math.max(...(p ?? [])), Math.max(...(q ?? []))) -
        Math.max(Math.min(...(p ?? [])), Math.min(...(q ?? [])));
      if (depth > 0) found.add(depth);
    }
    return [...found];
  };
  return goes((1 << puzzle.parts.length) - 1);
}

const lowest = (set: number): number => set & -set;
const has = (set: number, part: number): boolean => ((set >> part) & 1) === 1;
const square = (a: Cell, b: Cell): boolean => a[0] * b[0] + a[1] * b[1] + a[2] * b[2] === 0;
