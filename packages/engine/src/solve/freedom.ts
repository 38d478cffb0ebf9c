import type { Places, RigidBody } from './places.js';
import type { FreeGroup } from './types.js';

/**
 * What is not fixed: the bodies that still move, those that share a free unknown together (one missing fact
 * can leave several parts loose). Lengths that no plane depends on do not show.
 */
export function freeGroups(places: Places): FreeGroup[] {
  const leader = new Map<number, number>();
  const find = (free: number): number => {
    let at = free;
    for (let next = leader.get(at); next !== undefined && next !== at; next = leader.get(at)) at = next;
    return at;
  };
  const loose = places.bodies.filter((body) => places.isFree(body.sample));
  for (const body of loose) {
    const [first, ...others] = places.freedomsOf(body.sample);
    if (first === undefined) continue;
    if (!leader.has(first)) leader.set(first, first);
    for (const other of others) leader.set(find(other), find(first));
  }
  const groups = new Map<string, RigidBody[]>();
  for (const body of loose) {
    const [first = -1] = places.freedomsOf(body.sample);
    const key = `${body.axis} ${find(first)}`;
    groups.set(key, [...(groups.get(key) ?? []), body]);
  }
  return [...groups.values()].map((bodies) => ({
    axis: (bodies[0] as RigidBody).axis,
    unknowns: bodies.flatMap((body) => body.planes),
    bodies: bodies.map((body) => body.planes),
    freedom: new Set(bodies.flatMap((body) => [...places.freedomsOf(body.sample)])).size,
  }));
}
