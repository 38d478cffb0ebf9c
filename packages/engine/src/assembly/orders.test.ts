import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Apart, stuckIn, takeApart } from './apart.js';
import type { Assembly } from './assembly.js';
import { type Cell, goesTogether, type Puzzle } from './orders.fixture.js';
import { sequenceOf } from './sequence.js';
import { whyStuck } from './stuck.js';

/** Cells are larger than any play. */
const CELL = 10;

function assemblyOf({ parts, bonds, links }: Puzzle): Assembly {
  const items = parts.map((cells, i) => ({
    id: `part ${i}`,
    pieces: cells.map(([x, y, z]) => ({
      lo: [x * CELL, y * CELL, z * CELL] as const,
      hi: [(x + 1) * CELL, (y + 1) * CELL, (z + 1) * CELL] as const,
      slants: [],
    })),
  }));
  return {
    items,
    bonds: bonds.map((bond, i) => ({ ...bond, joint: `bond ${i}`, length: bond.length * CELL })),
    slopes: [],
    links: links.map(([entering, host], i) => ({
      joint: `link ${i}`,
      entering,
      host,
      pressed: true,
      glued: true,
      letIn: false,
    })),
  };
}

/** A block of cells shared out among parts; those that touch are joined, some by connectors square to where they touch. */
const puzzles = fc
  .record({
    count: fc.integer({ min: 2, max: 7 }),
    owners: fc.array(fc.nat(13), { minLength: 27, maxLength: 27 }),
    bonded: fc.array(fc.nat(99), { minLength: 21, maxLength: 21 }),
    share: fc.constantFrom(0, 25, 50, 80),
  })
  .map(({ count, owners, bonded, share }): Puzzle => {
    const cells: Cell[][] = Array.from({ length: count }, () => []);
    owners.forEach((owner, i) => {
      cells[owner]?.push([i % 3, Math.floor(i / 3) % 3, Math.floor(i / 9)]);
    });
    const parts = cells.filter((list) => list.length > 0);
    const links: (readonly [number, number])[] = [];
    const bonds: Puzzle['bonds'][number][] = [];
    for (let a = 0; a < parts.length; a++) {
      for (let b = a + 1; b < parts.length; b++) {
        const way = faceBetween(parts[a] as Cell[], parts[b] as Cell[]);
        if (!way) continue;
        links.push([a, b]);
        const chance = bonded[links.length - 1] ?? 99;
        if (chance < share) bonds.push({ entering: a, host: b, way, length: 1 + (chance % 2) });
      }
    }
    return { parts, bonds, links };
  });

/** The way the first part leaves the second where two of their cells touch. */
function faceBetween(a: readonly Cell[], b: readonly Cell[]): Cell | undefined {
  for (const p of a) {
    for (const q of b) {
      const way: Cell = [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
      if (Math.abs(way[0]) + Math.abs(way[1]) + Math.abs(way[2]) === 1) return way;
    }
  }
  return undefined;
}

it('finds an order exactly where trying every order of up to seven parts finds one', () => {
  let [together, never] = [0, 0];
  fc.assert(
    fc.property(puzzles, (puzzle) => {
      const expected = goesTogether(puzzle);
      if (expected) together++;
      else never++;
      expect(stuckIn(takeApart(assemblyOf(puzzle))).length === 0).toBe(expected);
    }),
    { numRuns: 600, seed: 20_261_126 },
  );
  expect(together).toBeGreaterThan(50);
  expect(never).toBeGreaterThan(50);
});

it('a group that cannot be put together can be without any one of its parts', () => {
  let seen = 0;
  fc.assert(
    fc.property(puzzles, (puzzle) => {
      const assembly = assemblyOf(puzzle);
      for (const stuck of stuckIn(takeApart(assembly))) {
        seen++;
        const { members } = whyStuck(assembly, stuck);
        const only = (list: readonly number[]): Puzzle => ({
          parts: list.map((m) => puzzle.parts[m] as Cell[]),
          bonds: puzzle.bonds.flatMap((bond) => renamed(bond, list)),
          links: puzzle.links.flatMap(([entering, host]) =>
            renamed({ entering, host }, list).map((pair) => [pair.entering, pair.host] as const),
          ),
        });
        expect(goesTogether(only(members))).toBe(false);
        for (const one of members) expect(goesTogether(only(members.filter((m) => m !== one)))).toBe(true);
      }
    }),
    { numRuns: 250, seed: 7 },
  );
  expect(seen).toBeGreaterThan(30);
});

function renamed<T extends { readonly entering: number; readonly host: number }>(
  pair: T,
  list: readonly number[],
): T[] {
  const [entering, host] = [list.indexOf(pair.entering), list.indexOf(pair.host)];
  return entering === -1 || host === -1 ? [] : [{ ...pair, entering, host }];
}

it('every part comes in exactly once, whatever the puzzle', () => {
  fc.assert(
    fc.property(puzzles, (puzzle) => {
      const assembly = assemblyOf(puzzle);
      expect(leaves(takeApart(assembly)).sort((a, b) => a - b)).toEqual(assembly.items.map((_, i) => i));
    }),
    { numRuns: 100, seed: 3 },
  );
});

it('each step of a glue-up can be made, and none leaves a part out', () => {
  let made = 0;
  fc.assert(
    fc.property(puzzles, fc.integer({ min: 1, max: 4 }), (puzzle, most) => {
      const assembly = assemblyOf(puzzle);
      const apart = takeApart(assembly, undefined, true);
      fc.pre(stuckIn(apart).length === 0);
      // What has been brought together, group by group.
      let groups: Set<number>[] = puzzle.parts.map((_, i) => new Set([i]));
      for (const { onto, coming, links } of sequenceOf(apart, assembly.links, most)) {
        const there = new Set(onto);
        if (coming.length > 1) expect(links.length).toBeLessThanOrEqual(most);
        for (const { members, legs } of coming) {
          expect(comesHome(puzzle, new Set(members), there, legs)).toBe(true);
          for (const member of members) there.add(member);
        }
        groups = [there, ...groups.filter((group) => ![...group].some((part) => there.has(part)))];
        made++;
      }
      expect(groups.flatMap((group) => [...group]).sort((a, b) => a - b)).toEqual(puzzle.parts.map((_, i) => i));
      // Whatever a joint brings together has come together.
      for (const [a, b] of puzzle.links) expect(groups.find((group) => group.has(a))?.has(b)).toBe(true);
    }),
    { numRuns: 300, seed: 11 },
  );
  expect(made).toBeGreaterThan(300);
});

/** Cell by cell: taken back along its legs, the last first, what has come meets nothing, and every bond lets it go. */
function comesHome(
  { parts, bonds }: Puzzle,
  moving: ReadonlySet<number>,
  staying: ReadonlySet<number>,
  legs: readonly { readonly way: readonly number[]; readonly length?: number | undefined }[],
): boolean {
  const taken = new Set([...staying].flatMap((part) => (parts[part] ?? []).map(String)));
  let at = [...moving].flatMap((part) => parts[part] ?? []);
  let held = bonds.filter(
    ({ entering, host }) => (moving.has(entering) && staying.has(host)) || (moving.has(host) && staying.has(entering)),
  );
  for (const { way, length } of [...legs].reverse()) {
    for (const { entering, way: own } of held) {
      const out = moving.has(entering) ? own : own.map((k) => -k || 0);
      if (String(out) !== String(way.map((k) => -k || 0))) return false;
    }
    const steps = length === undefined ? 12 : length / CELL;
    held = held.filter((bond) => bond.length > steps);
    for (let step = 0; step < steps; step++) {
      at = at.map(([x, y, z]): Cell => [x - (way[0] ?? 0), y - (way[1] ?? 0), z - (way[2] ?? 0)]);
      if (at.some((cell) => taken.has(String(cell)))) return false;
    }
  }
  return true;
}

const leaves = (apart: Apart): number[] =>
  apart.kind === 'one' || apart.kind === 'stuck' ? [...apart.members] : apart.children.flatMap(leaves);
