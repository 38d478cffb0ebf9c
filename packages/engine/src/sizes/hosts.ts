import { type Axis, axisOf, highSide, lowSide, opposite, type Side, thicknessAxis } from '../spec/sides.js';
import type { JointStatement, PartId, PartSpec, PlaneRef } from '../spec/spec.js';
import type { Planes } from './planes.js';

/** One host side that an entering part meets, and which of its own sides meets it. */
export interface Meeting {
  readonly host: PartId;
  readonly hostSide: Side;
  readonly enteringSide: Side;
  readonly axis: Axis;
  /** The plane as written, when the joint names a single plane; it may be a wall of a groove or notch. */
  readonly plane?: PlaneRef | undefined;
}

/** The host sides a joint names, low end before high end of each pair, then the single planes. */
export function meetings(joint: JointStatement, planes: Planes): readonly Meeting[] {
  const found: Meeting[] = [];
  for (const { low, high } of joint.between) {
    const lowPart = planes.part(low.part);
    const highPart = planes.part(high.part);
    if (!lowPart || !highPart) continue;
    const axis = low.side ? axisOf(low.side) : thicknessAxis(lowPart.attitude);
    const mitred = joint.verb === 'mitre';
    const lowHostSide = low.side ?? (mitred ? lowSide(axis) : highSide(axis));
    const highHostSide = high.side ?? (mitred ? highSide(axis) : lowSide(axis));
    found.push({ host: low.part, hostSide: lowHostSide, enteringSide: lowSide(axis), axis });
    found.push({ host: high.part, hostSide: highHostSide, enteringSide: highSide(axis), axis });
  }
  for (const plane of joint.to) {
    const axis = axisOf(plane.plane);
    const enteringSide = joint.verb === 'mitre' ? plane.plane : opposite(plane.plane);
    found.push({ host: plane.part, hostSide: plane.plane, enteringSide, axis, plane });
  }
  return found;
}

/** The parts a joint names as hosts, each once, in the order written. */
export function hostsOf(joint: JointStatement): readonly PartId[] {
  const ids = new Set<PartId>();
  for (const { low, high } of joint.between) ids.add(low.part).add(high.part);
  for (const plane of joint.to) ids.add(plane.part);
  return [...ids];
}

/** The entering parts that exist. */
export function enteringParts(joint: JointStatement, planes: Planes): readonly PartSpec[] {
  return joint.entering.map((id) => planes.part(id)).filter((part) => part !== undefined);
}
