import { dot, subtract, type Vector } from '../geometry/vector.js';
import type { Assembly, Item } from './assembly.js';
import { ALIKE, opening } from './opening.js';
import { runsInto } from './sweep.js';

/** Whether items leave each other when all of them move at the same time, each its own way. */
export type AtOnce =
  | { readonly kind: 'opens'; readonly groups: readonly (readonly number[])[]; readonly ways: readonly Vector[] }
  /** They begin to leave each other, and are in each other's way farther on. */
  | { readonly kind: 'unclear' }
  /** There is no such move, however small. */
  | { readonly kind: 'locked' };

/** Most items for which it is asked: the program grows with their square, and somebody may be typing. */
const MOST_MEMBERS = 60;

/**
 * Moves for every item at once, such that each bond opens its own way and nothing that touches is pressed together,
 * and some bond opens: a linear program (Wilson and Latombe's "infinitesimal motions"). Along axes alone such moves
 * are never more than a single part's: the items that go fastest along an axis could go on their own. So this is
 * asked only where joints slant.
 * @param few whether as many bonds as can be are to stay closed meanwhile, so that few are drawn together
 */
export function allAtOnce(assembly: Assembly, members: readonly number[], few = false): AtOnce {
  const place = new Map(members.map((member, i) => [member, i]));
  const slanting = [...assembly.slopes, ...assembly.bonds.filter(({ way }) => way.filter(Boolean).length > 1)];
  if (!slanting.some(({ entering, host }) => place.has(entering) && place.has(host))) return { kind: 'locked' };
  if (members.length > MOST_MEMBERS) return { kind: 'unclear' };
  let speeds = opening(assembly, members, new Set());
  if (!speeds) return { kind: 'locked' };
  if (few) speeds = fewer(assembly, members, place, speeds);
  const ways = classes(speeds);
  if (ways.groups.length < 2) return { kind: 'locked' };
  if (!clear(assembly, members, place, speeds)) return { kind: 'unclear' };
  return { kind: 'opens', groups: ways.groups.map((group) => group.map((i) => members[i] as number)), ways: ways.ways };
}

/** Moves that open no more bonds than some of them must: each is kept closed in turn, as long as that leaves a move that is clear. */
function fewer(
  assembly: Assembly,
  members: readonly number[],
  place: ReadonlyMap<number, number>,
  all: readonly Vector[],
): readonly Vector[] {
  const closed = new Set<string>();
  let speeds = all;
  for (const { joint, entering, host } of assembly.bonds) {
    if (!place.has(entering) || !place.has(host)) continue;
    const found = opening(assembly, members, new Set([...closed, joint]));
    if (!found || !clear(assembly, members, place, found)) continue;
    closed.add(joint);
    speeds = found;
  }
  return speeds;
}

function classes(speeds: readonly Vector[]) {
  const groups: number[][] = [];
  const ways: Vector[] = [];
  speeds.forEach((speed, i) => {
    const g = ways.findIndex((way) => way.every((k, j) => Math.abs(k - (speed[j] as number)) < ALIKE));
    if (g === -1) {
      ways.push(speed);
      groups.push([i]);
    } else groups[g]?.push(i);
  });
  return { groups, ways };
}

/** Whether every two members that go differently stay out of each other's way for ever. */
function clear(
  { items, slopes }: Assembly,
  members: readonly number[],
  place: ReadonlyMap<number, number>,
  speeds: readonly Vector[],
): boolean {
  const settled = new Map<string, Vector>();
  for (const { entering, host, normal } of slopes) settled.set(`${place.get(entering)} ${place.get(host)}`, normal);
  for (let a = 0; a < members.length; a++) {
    for (let b = a + 1; b < members.length; b++) {
      const exact = subtract(speeds[a] as Vector, speeds[b] as Vector);
      const way = exact.map((k) => (Math.abs(k) < ALIKE ? 0 : k)) as unknown as Vector;
      if (dot(way, way) === 0) continue;
      const [ab, ba] = [settled.get(`${a} ${b}`), settled.get(`${b} ${a}`)];
      if (ab || ba) {
        if ((ab && dot(ab, way) < -ALIKE) || (ba && dot(ba, way) > ALIKE)) return false;
        continue;
      }
      const [one, two] = [items[members[a] as number] as Item, items[members[b] as number] as Item];
      const move = { way, upTo: Number.POSITIVE_INFINITY };
      if (one.pieces.some((p) => two.pieces.some((q) => runsInto(p, q, move)))) return false;
    }
  }
  return true;
}
