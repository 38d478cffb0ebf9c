import type { Vector } from '../geometry/vector.js';
import type { Assembly } from './assembly.js';
import { allAtOnce } from './at-once.js';
import { blocking, waysOf } from './blocking.js';
import { components, connected } from './components.js';
import { MOST_MEMBERS, twoMoves } from './two-moves.js';

/**
 * How items come apart. Putting together is the same backwards, so that whatever comes apart can be put together.
 * Taking a part away never gets in the way of the others: if a group comes apart, so does every smaller group of its
 * parts, in the same moves. Whichever split is found first may therefore be taken, and nothing is ever tried again.
 */
export type Apart =
  | { readonly kind: 'one'; readonly members: readonly number[] }
  /** Groups that no joint holds together: they need no move. */
  | { readonly kind: 'separate'; readonly members: readonly number[]; readonly children: readonly Apart[] }
  /** One group after the other, the first first, leaves in the same moves. */
  | {
      readonly kind: 'one by one';
      readonly members: readonly number[];
      readonly children: readonly Apart[];
      /** A single way, or one for a length in mm and then another. */
      readonly moves: readonly Leg[];
      /** For each child, those that have to be gone before it, moving that way. */
      readonly after: readonly (readonly number[])[];
    }
  /** All groups leave at the same time, each its own way and each as fast as its way is long. */
  | {
      readonly kind: 'at once';
      readonly members: readonly number[];
      readonly children: readonly Apart[];
      readonly ways: readonly Vector[];
    }
  /** No move that is tried takes any of them away from the others. */
  | { readonly kind: 'stuck'; readonly members: readonly number[]; readonly proven: boolean };

/** A straight piece of a move. */
export interface Leg {
  readonly way: Vector;
  /** How far, mm; absent on the last one, which goes on until all is clear. */
  readonly length?: number | undefined;
}

/**
 * Takes an assembly, or some items of it, apart down to single items, as far as that can be done.
 * @param neat whether to look for the way of most groups, and for moves at once of as few joints as can be: for steps
 * that somebody follows; whether there are any does not depend on it
 */
export function takeApart(
  assembly: Assembly,
  some: readonly number[] = assembly.items.map((_, i) => i),
  neat = false,
): Apart {
  const ways = waysOf(assembly);
  const links = assembly.links.map(({ entering, host }): readonly [number, number] => [entering, host]);
  const apart = (members: readonly number[]): Apart => {
    if (members.length <= 1) return { kind: 'one', members };
    const groups = connected(members, links);
    if (groups.length > 1) return { kind: 'separate', members, children: groups.map(apart) };
    const split = straight(assembly, members, ways, neat);
    if (split) return oneByOne(members, split, apart);
    const together = allAtOnce(assembly, members, neat);
    if (together.kind === 'opens')
      return { kind: 'at once', members, children: together.groups.map(apart), ways: together.ways };
    const round = twoMoves(assembly, members);
    if (round) return oneByOne(members, round, apart);
    return { kind: 'stuck', members, proven: together.kind === 'locked' && members.length <= MOST_MEMBERS };
  };
  return apart(some);
}

/** Groups that leave one after the other by the same moves, as places among the members. */
export interface Split {
  readonly groups: readonly (readonly number[])[];
  readonly moves: readonly Leg[];
  readonly arcs: readonly (readonly number[])[];
}

/** A way along which they come apart, the first or that of most groups. */
function straight(
  assembly: Assembly,
  members: readonly number[],
  ways: readonly Vector[],
  neat: boolean,
): Split | undefined {
  let best: Split | undefined;
  for (const way of ways) {
    const arcs = blocking(assembly, members, way);
    const groups = components(arcs);
    if (groups.length > (best?.groups.length ?? 1)) best = { groups, moves: [{ way }], arcs };
    if (best && (!neat || best.groups.length === members.length)) return best;
  }
  return best;
}

function oneByOne(
  members: readonly number[],
  { groups, moves, arcs }: Split,
  apart: (m: readonly number[]) => Apart,
): Apart {
  const groupOf = new Map(groups.flatMap((group, g) => group.map((place): readonly [number, number] => [place, g])));
  const after = groups.map((group, g) => {
    const first = new Set(group.flatMap((place) => (arcs[place] ?? []).map((other) => groupOf.get(other) ?? g)));
    first.delete(g);
    return [...first];
  });
  const children = groups.map((group) => apart(group.map((place) => members[place] as number)));
  return { kind: 'one by one', members, children, moves, after };
}

/** Every group that does not come apart. */
export function stuckIn(apart: Apart): readonly Extract<Apart, { kind: 'stuck' }>[] {
  if (apart.kind === 'stuck') return [apart];
  return apart.kind === 'one' ? [] : apart.children.flatMap(stuckIn);
}
