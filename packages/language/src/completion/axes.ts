import { type Axis, axisOf, highSide, lowSide, opposite, type Side, thirdAxis } from '@dryfit/engine';
import type { Head, Named } from './head.js';
import { type Standing, thicknessOf } from './standing.js';

/** Which way a joint's parts meet, as far as its words tell. */
export interface JointAxes {
  /** Across the places where the parts touch. */
  readonly contact: readonly Axis[];
  /** Sides of the entering part that the joint itself places. */
  readonly ends: readonly Side[];
  /** The ways slots may be strung. */
  readonly run: readonly Axis[];
  /** Across the run: the thickness of the part whose edge is milled. */
  readonly across: readonly Axis[];
}

/**
 * The same as the engine finds, from words alone: the axis of a contact is that of the side named, or of the host's
 * thickness; slots run along the edge that is milled, which is the entering part's unless its face meets the host.
 * @param outer side a mitre's toe is at, where it is written
 */
export function axesOf(head: Head, parts: ReadonlyMap<string, Standing>, outer?: Side): JointAxes {
  const thickness = (part: Named | undefined) => {
    const standing = part && parts.get(part.name);
    return standing && thicknessOf(standing);
  };
  const own = thickness(head.entering[0]);
  const hosts = [...head.pairs.flatMap((pair) => pair.slice(0, 1)), ...head.to];
  const contact: Axis[] = [];
  const ends: Side[] = [];
  const run: Axis[] = [];
  const across: Axis[] = [];
  for (const host of hosts) {
    const axis = host.side ? axisOf(host.side) : thickness(host);
    if (axis === undefined) continue;
    contact.push(axis);
    ends.push(...(head.to.includes(host) && host.side ? [opposite(host.side)] : [lowSide(axis), highSide(axis)]));
    const edge = head.verb === 'mitre' && outer ? axisOf(outer) : own === axis ? thickness(host) : own;
    const along = edge && thirdAxis(axis, edge);
    if (edge === undefined || along === undefined) continue;
    across.push(edge);
    run.push(along);
  }
  return { contact: once(contact), ends: once(ends), run: once(run), across: once(across) };
}

const once = <T>(values: readonly T[]): readonly T[] => [...new Set(values)];
