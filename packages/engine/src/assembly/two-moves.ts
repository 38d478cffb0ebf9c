import type { Vector } from '../geometry/vector.js';
import type { Split } from './apart.js';
import type { Assembly, Item, Piece } from './assembly.js';
import { bonded, collector, isIn, sloped } from './blocking.js';
import { components } from './components.js';
import { runsInto } from './sweep.js';

const WAYS: readonly Vector[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

/** Most lengths that are tried along one axis, and most items: this is asked while somebody types. */
const MOST_LENGTHS = 16;
export const MOST_MEMBERS = 120;

/**
 * Groups that leave by going a little one way, until a joint is open, and then on another way: a panel lifted out of
 * its lower groove and then drawn forward. Asked only where no single way does.
 */
export function twoMoves(assembly: Assembly, members: readonly number[]): Split | undefined {
  if (members.length > MOST_MEMBERS) return undefined;
  const items = members.map((member) => assembly.items[member] as Item);
  for (const first of WAYS) {
    const axis = first.findIndex((k) => k !== 0) as 0 | 1 | 2;
    for (const length of lengthsAlong(assembly, axis)) {
      const { arcs, block } = collector(assembly, members);
      bonded(assembly, members, first, block);
      const settled = sloped(assembly, members, first, block);
      if (components(arcs).length < 2) break;
      sweep(items, settled, block, (p, q) => runsInto(p, q, { way: first, upTo: length }));
      // Whatever the second way is, it can only add to what is in the way.
      if (components(arcs).length < 2) continue;
      for (const second of WAYS) {
        if (second[axis] !== 0) continue;
        const all = arcs.map((list) => [...list]);
        const blockAll = (a: number, b: number): void => {
          all[a]?.push(b);
        };
        bonded(stillHeld(assembly, first, length), members, second, blockAll);
        sloped(assembly, members, second, blockAll);
        const onward = { way: second, upTo: Number.POSITIVE_INFINITY };
        sweep(items, settled, blockAll, (p, q) => runsInto(shifted(p, first, length), q, onward));
        const groups = components(all);
        if (groups.length > 1) return { groups, moves: [{ way: first, length }, { way: second }], arcs: all };
      }
    }
  }
  return undefined;
}

/** The bonds that are not open yet when the first way has been gone. */
const stillHeld = (assembly: Assembly, first: Vector, gone: number): Assembly => ({
  ...assembly,
  bonds: assembly.bonds.filter(({ way, length }) => way.some((k, i) => k !== 0 && first[i] === 0) || length > gone),
});

function sweep(
  items: readonly Item[],
  settled: ReadonlySet<number>,
  block: (a: number, b: number) => void,
  hits: (moving: Piece, staying: Piece) => boolean,
): void {
  const any = (a: number, b: number): boolean =>
    items[a]?.pieces.some((p) => items[b]?.pieces.some((q) => hits(p, q))) === true;
  for (let a = 0; a < items.length; a++) {
    for (let b = a + 1; b < items.length; b++) {
      if (isIn(settled, items.length, a, b)) continue;
      if (any(a, b)) block(a, b);
      if (any(b, a)) block(b, a);
    }
  }
}

/**
 * How far joined items stand in each other along an axis, and how far connectors reach: of the whole assembly, so that
 * a group has the same moves to try whatever else has been taken away.
 */
function lengthsAlong({ items, bonds, links }: Assembly, axis: 0 | 1 | 2): readonly number[] {
  const lengths = new Set(bonds.filter(({ way }) => way[axis] !== 0).map(({ length }) => length));
  for (const { entering, host } of links) {
    const [a, b] = [spanOf(items[entering] as Item, axis), spanOf(items[host] as Item, axis)];
    const depth = Math.min(a.hi, b.hi) - Math.max(a.lo, b.lo);
    if (depth > 0) lengths.add(depth);
  }
  return [...lengths].sort((a, b) => a - b).slice(0, MOST_LENGTHS);
}

function spanOf({ pieces }: Item, axis: 0 | 1 | 2) {
  return { lo: Math.min(...pieces.map(({ lo }) => lo[axis])), hi: Math.max(...pieces.map(({ hi }) => hi[axis])) };
}

function shifted(piece: Piece, way: Vector, length: number): Piece {
  const by: Vector = [way[0] * length, way[1] * length, way[2] * length];
  const moved = ({ lo, hi }: { readonly lo: Vector; readonly hi: Vector }) => ({
    lo: [lo[0] + by[0], lo[1] + by[1], lo[2] + by[2]] as Vector,
    hi: [hi[0] + by[0], hi[1] + by[1], hi[2] + by[2]] as Vector,
  });
  const slants = piece.slants.map(({ normal, offset }) => ({
    normal,
    offset: offset + normal[0] * by[0] + normal[1] * by[1] + normal[2] * by[2],
  }));
  return { ...moved(piece), slants, core: piece.core && moved(piece.core) };
}
