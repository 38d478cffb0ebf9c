import { subtract, type Vector } from '../geometry/vector.js';
import type { Apart, Leg } from './apart.js';
import type { Link } from './assembly.js';
import { back, fewest, homes, type OneByOne, size } from './one-by-one.js';

/** Items that come to the work in one move. */
export interface Coming {
  readonly members: readonly number[];
  /** The moves it makes to get there, the last one home. */
  readonly legs: readonly Leg[];
}

/** A step: what is there, what comes to it, and which joints that closes. */
export interface Closing {
  readonly onto: readonly number[];
  readonly coming: readonly Coming[];
  readonly links: readonly Link[];
  /** Joints that only close while others do: all are drawn together. */
  readonly atOnce: boolean;
}

/**
 * Steps that put an assembly together, from how it comes apart. Parts that come the same way and do not touch each
 * other come in one step, as long as it closes no more than `most` glued joints.
 */
export function sequenceOf(apart: Apart, links: readonly Link[], most = Number.POSITIVE_INFINITY): readonly Closing[] {
  switch (apart.kind) {
    case 'one':
    case 'stuck':
      return [];
    case 'separate':
      return apart.children.flatMap((child) => sequenceOf(child, links, most));
    case 'at once':
      return [...apart.children.flatMap((child) => sequenceOf(child, links, most)), drawnTogether(apart, links)];
    case 'one by one':
      return [
        ...apart.children.flatMap((child) => sequenceOf(child, links, most)),
        ...(apart.moves.length > 1 ? backwards(apart, links) : fewest(apart, links, most)),
      ];
  }
}

/** The links between items of one set and items of another. */
function between(links: readonly Link[], a: ReadonlySet<number>, b: ReadonlySet<number>): readonly Link[] {
  return links.filter(({ entering, host }) => (a.has(entering) && b.has(host)) || (a.has(host) && b.has(entering)));
}

function drawnTogether({ children, ways }: Extract<Apart, { kind: 'at once' }>, links: readonly Link[]): Closing {
  const base = children.reduce((most, child, i) => (child.members.length > size(children[most]) ? i : most), 0);
  const alone = children.every((child) => child.members.length === size(children[base]));
  // Where no group is the largest they meet half way, and the first is what the others come to.
  const still = alone ? mean(ways) : (ways[base] as Vector);
  const home = homes(children);
  return {
    onto: alone ? [] : (children[base]?.members ?? []),
    coming: children.flatMap(({ members }, c) => {
      const way = back(subtract(ways[c] as Vector, still));
      return c === base && !alone ? [] : [{ members, legs: [{ way }] }];
    }),
    links: links.filter(({ entering, host }) => {
      const [a, b] = [home.get(entering), home.get(host)];
      return a !== undefined && b !== undefined && a !== b;
    }),
    atOnce: true,
  };
}

const mean = (ways: readonly Vector[]): Vector => {
  const sum = ways.reduce<Vector>((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]], [0, 0, 0]);
  return [sum[0] / ways.length, sum[1] / ways.length, sum[2] / ways.length];
};

/** What leaves first by a way round a corner comes last, the same way back. */
function backwards(apart: OneByOne, links: readonly Link[]): readonly Closing[] {
  const [first, second] = apart.moves;
  const last = apart.children.at(-1);
  if (!first || !second || !last) return [];
  const placed = new Set(last.members);
  const legs: readonly Leg[] = [{ way: back(second.way) }, { way: back(first.way), length: first.length }];
  return [...apart.children.slice(0, -1)].reverse().map(({ members }) => {
    const onto = [...placed];
    const closed = between(links, new Set(members), placed);
    for (const member of members) placed.add(member);
    return { onto, coming: [{ members, legs }], links: closed, atOnce: false };
  });
}
