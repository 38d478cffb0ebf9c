import type { Vector } from '../geometry/vector.js';
import type { Apart } from './apart.js';
import type { Link } from './assembly.js';
import type { Closing } from './sequence.js';

export type OneByOne = Extract<Apart, { kind: 'one by one' }>;

export const size = (apart: Apart | undefined): number => apart?.members.length ?? 0;

/** The same way the other way round. */
export const back = (way: Vector): Vector => [-way[0] || 0, -way[1] || 0, -way[2] || 0];

/** Which child each item belongs to. */
export const homes = (children: readonly Apart[]): ReadonlyMap<number, number> =>
  new Map(children.flatMap(({ members }, c) => members.map((member): readonly [number, number] => [member, c])));

const glued = (links: readonly Link[]): number => links.filter((link) => link.glued).length;

/** Most groups for which every one is tried as the first: then as many orders are made as there are groups. */
const MOST_TRIED = 24;

/** The order from the likeliest first group; from the one that closes fewest glued joints in a step where that closes too many. */
export function fewest(apart: OneByOne, links: readonly Link[], most: number): readonly Closing[] {
  const starts = startsOf(apart, links);
  let best: readonly Closing[] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const start of starts.slice(0, MOST_TRIED)) {
    const steps = oneByOne(apart, links, most, start);
    const worst = Math.max(0, ...steps.map((step) => glued(step.links)));
    if (worst < least) [best, least] = [steps, worst];
    if (worst <= most) break;
  }
  return best ?? [];
}

/** Children in the order in which they are tried as the first: the largest, then the outermost, then as written. */
function startsOf({ children, after }: OneByOne, links: readonly Link[]): readonly number[] {
  const awaited = new Set(after.flat());
  const ends = children.map((_, c) => (after[c]?.length === 0 || !awaited.has(c) ? 1 : 0));
  const joined = joinedTo(children, links).map((list) => list.length);
  const first = (c: number): number => Math.min(...(children[c]?.members ?? []));
  return children
    .map((_, c) => c)
    .sort(
      (a, b) =>
        size(children[b]) - size(children[a]) ||
        (ends[b] as number) - (ends[a] as number) ||
        (joined[b] as number) - (joined[a] as number) ||
        first(a) - first(b),
    );
}

/** Puts children to a first one, each from the side that is still open to it. */
function oneByOne(apart: OneByOne, links: readonly Link[], most: number, start: number): readonly Closing[] {
  const { children, moves } = apart;
  const out = moves[0]?.way ?? [0, 0, 0];
  const reach = reachOf(apart.after);
  const placed = new Set([start]);
  const steps: Closing[] = [];
  const joined = joinedTo(children, links);
  const closes = (c: number): readonly Link[] =>
    (joined[c] ?? []).flatMap(({ link, other }) => (placed.has(other) ? [link] : []));
  while (placed.size < children.length) {
    const sideOf = sides(placed, children.length, reach);
    const open = children.flatMap((_, c) => {
      const side = placed.has(c) ? 0 : sideOf(c);
      return side === 0 ? [] : [{ c, side, closed: closes(c) }];
    });
    // What closes nothing yet waits for something to hold it, and what only lies in grooves for what is glued.
    open.sort(
      (a, b) => rank(b.closed) - rank(a.closed) || Math.min(...members(apart, a.c)) - Math.min(...members(apart, b.c)),
    );
    const [lead] = open;
    if (!lead) return steps;
    const taken = [lead];
    const together = new Set([lead.c]);
    let count = glued(lead.closed);
    for (const one of lead.closed.length === 0 ? [] : open.slice(1)) {
      if (one.side !== lead.side || one.closed.length === 0 || count + glued(one.closed) > most) continue;
      if (joined[one.c]?.some(({ other }) => together.has(other))) continue;
      if (taken.some(({ c }) => reach[c]?.has(one.c) || reach[one.c]?.has(c))) continue;
      taken.push(one);
      together.add(one.c);
      count += glued(one.closed);
    }
    const way = lead.side > 0 ? back(out) : out;
    steps.push({
      onto: [...placed].flatMap((c) => members(apart, c)),
      coming: taken.map(({ c }) => ({ members: members(apart, c), legs: [{ way }] })),
      links: taken.flatMap(({ closed }) => closed),
      atOnce: false,
    });
    for (const { c } of taken) placed.add(c);
  }
  return steps;
}

/** For each child, the links to others. */
function joinedTo(
  children: readonly Apart[],
  links: readonly Link[],
): readonly (readonly { readonly link: Link; readonly other: number }[])[] {
  const home = homes(children);
  const joined: { readonly link: Link; readonly other: number }[][] = children.map(() => []);
  for (const link of links) {
    const [a, b] = [home.get(link.entering), home.get(link.host)];
    if (a === undefined || b === undefined || a === b) continue;
    joined[a]?.push({ link, other: b });
    joined[b]?.push({ link, other: a });
  }
  return joined;
}

const members = ({ children }: OneByOne, c: number): readonly number[] => children[c]?.members ?? [];

const rank = (closed: readonly Link[]): number =>
  closed.length === 0 ? 0 : closed.every(({ pressed }) => !pressed) ? 1 : 2;

/** For each child, all that stand before it on its way out, near and far. */
function reachOf(after: OneByOne['after']): readonly ReadonlySet<number>[] {
  // A child's own come before it in the list, since they leave first.
  const reach: Set<number>[] = [];
  after.forEach((list, c) => {
    const all = new Set<number>();
    for (const other of list) {
      all.add(other);
      for (const far of reach[other] ?? []) all.add(far);
    }
    reach[c] = all;
  });
  return reach;
}

/**
 * Tells from which side a child can come to the placed ones: 1 from where the way out leads, −1 from the opposite one,
 * 0 while something not yet placed has to stand between them first.
 */
function sides(
  placed: ReadonlySet<number>,
  count: number,
  reach: readonly ReadonlySet<number>[],
): (c: number) => 1 | -1 | 0 {
  const before = new Set([...placed].flatMap((p) => [...(reach[p] ?? [])]));
  const behind = new Set<number>();
  for (let u = 0; u < count; u++) if ([...placed].some((p) => reach[u]?.has(p))) behind.add(u);
  const waiting = (set: ReadonlySet<number>): readonly number[] => [...set].filter((u) => !placed.has(u));
  const [ahead, back] = [waiting(before), waiting(behind)];
  return (c) => {
    if (ahead.some((u) => u !== c && reach[u]?.has(c)) || back.some((u) => u !== c && reach[c]?.has(u))) return 0;
    if (before.has(c) && behind.has(c)) return 0;
    return behind.has(c) ? -1 : 1;
  };
}
