import { cross, dot, type Vector } from '../geometry/vector.js';
import type { Assembly, Bond, Item, Piece } from './assembly.js';
import { type Move, runsInto } from './sweep.js';

/** For each member, by its place among the members, those that have to go before it can. */
export type Blocking = readonly (readonly number[])[];

/** Ways that are tried: along the axes, and square off every slanting joint. A way stands for its opposite too. */
export function waysOf({ bonds, slopes }: Assembly): readonly Vector[] {
  const ways: Vector[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const known = new Set(ways.map(String));
  for (const way of [...bonds.map((bond) => bond.way), ...slopes.map((slope) => slope.normal)]) {
    if (known.has(String(way))) continue;
    known.add(String(way));
    if (!ways.some((one) => parallel(one, way))) ways.push(way);
  }
  return ways;
}

const ENDLESS = Number.POSITIVE_INFINITY;

/**
 * Which members are in each other's way when they leave along `way` and go on for ever: the directional blocking graph
 * of Wilson and Latombe ("Geometric reasoning about mechanical assembly", Artificial Intelligence 71, 1994). With all
 * arrows turned round it is the graph of the opposite way.
 */
export function blocking(assembly: Assembly, members: readonly number[], way: Vector): Blocking {
  const { arcs, block } = collector(assembly, members);
  const move: Move = { way, upTo: ENDLESS };
  bonded(assembly, members, way, block);
  const settled = sloped(assembly, members, way, block);
  const items = members.map((member) => assembly.items[member] as Item);
  const axis = axisAlong(way);
  for (const [a, b] of beside(items, way)) {
    if (isIn(settled, items.length, a, b)) continue;
    for (const p of items[a]?.pieces ?? []) {
      for (const q of items[b]?.pieces ?? []) {
        if (axis !== undefined && apartAcross(p, q, axis)) continue;
        if (runsInto(p, q, move)) block(a, b);
        if (runsInto(q, p, move)) block(b, a);
      }
    }
  }
  return arcs;
}

/** The axis a way is along, if it is. */
function axisAlong(way: Vector): 0 | 1 | 2 | undefined {
  const along = ([0, 1, 2] as const).filter((i) => way[i] !== 0);
  return along.length === 1 ? along[0] : undefined;
}

/** Whether pieces that move along an axis can never meet. */
function apartAcross(p: Piece, q: Piece, axis: 0 | 1 | 2): boolean {
  const [j, k] = axis === 0 ? ([1, 2] as const) : axis === 1 ? ([0, 2] as const) : ([0, 1] as const);
  return p.hi[j] <= q.lo[j] || q.hi[j] <= p.lo[j] || p.hi[k] <= q.lo[k] || q.hi[k] <= p.lo[k];
}

/** Who has to go first, filled in pair by pair. */
export function collector({ items }: Assembly, members: readonly number[]) {
  const arcs: number[][] = members.map(() => []);
  const known = new Set<number>();
  const block = (a: number, b: number): void => {
    const key = a * items.length + b;
    if (known.has(key)) return;
    known.add(key);
    arcs[a]?.push(b);
  };
  return { arcs, block };
}

type Block = (a: number, b: number) => void;

/** Connectors let go one way only; along any other, neither part moves without the other. */
export function bonded({ bonds }: Assembly, members: readonly number[], way: Vector, block: Block): void {
  const place = placesOf(members);
  for (const bond of bonds) {
    const [entering, host] = [place.get(bond.entering), place.get(bond.host)];
    if (entering === undefined || host === undefined) continue;
    const sense = senseOf(bond, way);
    if (sense <= 0) block(entering, host);
    if (sense >= 0) block(host, entering);
  }
}

/** 1 where the entering part may leave that way, −1 where its host may, 0 where neither. */
function senseOf({ way: own }: Bond, way: Vector): number {
  return parallel(own, way) ? Math.sign(dot(own, way)) : 0;
}

/** Whether two ways run alike or against each other, to within the rounding of a turn. */
function parallel(a: Vector, b: Vector): boolean {
  const across = cross(a, b);
  return dot(across, across) <= 1e-18 * dot(a, a) * dot(b, b);
}

/** Parts that meet in a slanting plane leave it on its open side; gives the pairs whose bodies need not be asked. */
export function sloped(
  { slopes, passing = [] }: Assembly,
  members: readonly number[],
  way: Vector,
  block: Block,
): ReadonlySet<number> {
  const place = placesOf(members);
  const settled = new Set<number>();
  for (const { entering, host, normal } of slopes) {
    const [a, b] = [place.get(entering), place.get(host)];
    if (a === undefined || b === undefined) continue;
    settled.add(a * members.length + b);
    const sense = dot(normal, way);
    if (sense < 0) block(a, b);
    if (sense > 0) block(b, a);
  }
  for (const { entering, host } of passing) {
    const [a, b] = [place.get(entering), place.get(host)];
    if (a !== undefined && b !== undefined) settled.add(a * members.length + b);
  }
  return settled;
}

/** Whether a pair, either way round, is in a set of pairs of so many members. */
export const isIn = (pairs: ReadonlySet<number>, count: number, a: number, b: number): boolean =>
  pairs.size > 0 && (pairs.has(a * count + b) || pairs.has(b * count + a));

const placesOf = (members: readonly number[]): ReadonlyMap<number, number> =>
  new Map(members.map((member, i) => [member, i]));

/** Pairs of items that overlap on an axis across the way, the only ones that can meet, by a sweep along that axis. */
export function* beside(items: readonly Item[], way: Vector): Generator<readonly [number, number]> {
  const axis = ([2, 0, 1] as const).find((i) => way[i] === 0);
  if (axis === undefined) {
    for (let a = 0; a < items.length; a++) for (let b = a + 1; b < items.length; b++) yield [a, b];
    return;
  }
  const spans = items.map(({ pieces }, i) => ({
    i,
    lo: Math.min(...pieces.map(({ lo }) => lo[axis])),
    hi: Math.max(...pieces.map(({ hi }) => hi[axis])),
  }));
  spans.sort((a, b) => a.lo - b.lo);
  for (let a = 0; a < spans.length; a++) {
    const one = spans[a] as (typeof spans)[number];
    for (let b = a + 1; b < spans.length; b++) {
      const two = spans[b] as (typeof spans)[number];
      if (two.lo >= one.hi) break;
      yield [one.i, two.i];
    }
  }
}
