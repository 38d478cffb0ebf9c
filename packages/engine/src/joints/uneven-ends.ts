import type { Fit, FittedJoint, FittedPart, Half } from '../fit/fit.js';
import type { Rational } from '../number/rational.js';
import { axisOf, opposite, type Side } from '../spec/sides.js';

/** A stop that a milled half needs, on the host that an entering part meets. */
export interface Stop {
  readonly joint: FittedJoint;
  readonly half: Half;
  readonly end: Side;
  /** From the end to the reference plane, mm. */
  readonly at: Rational;
}

/** Two ends of one part that need different stops. */
export interface Uneven {
  readonly more: Stop;
  readonly less: Stop;
  /** By how much, mm, > 0. */
  readonly by: Rational;
}

/** The stops that the halves milled into faces need. */
export const stopsOfJoints = (joints: readonly FittedJoint[]): readonly Stop[] =>
  joints.flatMap((joint) =>
    joint.halves.flatMap((half) =>
      half.stop && half.slots.length > 0 ? [{ joint, half, end: half.stop.end, at: half.stop.at }] : [],
    ),
  );

/** Stops by what they have in common, in the order of the joints. */
export function stopsBy(stops: readonly Stop[], key: (stop: Stop) => string): readonly (readonly [Stop, ...Stop[]])[] {
  const groups = new Map<string, [Stop, ...Stop[]]>();
  for (const stop of stops) {
    const group = groups.get(key(stop));
    if (group) group.push(stop);
    else groups.set(key(stop), [stop]);
  }
  return [...groups.values()];
}

/** Parts whose two ends need different stops: both ends in hosts' faces, one opposite the other. */
export function unevenEndsOf(stops: readonly Stop[]): readonly Uneven[] {
  const hosts = stops.filter(({ joint, half }) => half.part === joint.host);
  return stopsBy(hosts, ({ joint }) => `${joint.statement}\n${joint.entering}\n${joint.axis}`).flatMap((ends) => {
    const [first, ...rest] = ends;
    const second = rest.find((stop) => stop.joint.enteringSide === opposite(first.joint.enteringSide));
    if (!second || second.end !== first.end) return [];
    const [more, less] = first.at.ge(second.at) ? [first, second] : [second, first];
    const by = more.at.sub(less.at);
    return by.sign() > 0 ? [{ more, less, by }] : [];
  });
}

/**
 * A part whose offcut makes up the difference of two stops: the one that the part with the lesser stop stands on by its end,
 * if it is as thick as that, else the first by name that is.
 */
export function partAsThick(
  { joints, parts }: Pick<Fit, 'joints' | 'parts'>,
  { less, by }: Uneven,
): FittedPart | undefined {
  const axis = axisOf(less.end);
  const thick = parts
    .filter(({ cutSize, extent }) => cutSize?.thickness.equals(by) && extent[axis]?.equals(by))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  const under = joints.find(({ entering, enteringSide }) => entering === less.half.part && enteringSide === less.end);
  return thick.find(({ id }) => id === under?.host) ?? thick[0];
}
