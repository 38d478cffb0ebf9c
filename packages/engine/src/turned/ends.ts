import { axisOf, type Side, thicknessAxis } from '../spec/sides.js';
import type { CantStatement, JointStatement, PartId, PartSpec, Spec } from '../spec/spec.js';
import { cantOf } from './cant.js';

/** An end of a turned part mitred to the part that stands beside it. */
export interface MitredEnd {
  readonly host: PartId;
  /** The host's outer side, whose plane runs through that end of the cant. */
  readonly outer: Side;
  /** The end of the host that is bevelled. */
  readonly end: Side;
}

/** A host of a mitre as it is written. */
export interface NamedHost {
  readonly host: PartId;
  readonly outer: Side | undefined;
}

/** The hosts of a joint with the sides written for them. */
export const namedHosts = (joint: JointStatement): readonly NamedHost[] => [
  ...joint.between.flatMap(({ low, high }) => [low, high]).map(({ part, side }) => ({ host: part, outer: side })),
  ...joint.to.map(({ part, plane, of }) => ({ host: part, outer: of === 'part' ? plane : undefined })),
];

/** The cant a turned part stands along. */
export const cantUnder = (spec: Spec, part: PartSpec): CantStatement | undefined =>
  part.on && cantOf(spec, part.on.part);

/**
 * How a host meets a turned part in a mitre: its outer side is one of the two that the cant lies between, and it stands
 * with its thickness across that side. Undefined where it does not.
 */
export function mitredEnd(cant: CantStatement, host: PartSpec | undefined, named: NamedHost): MitredEnd | undefined {
  const { outer } = named;
  if (!host || host.on || outer === undefined || !cant.corner.includes(outer)) return undefined;
  const end = cant.corner.find((side) => side !== outer);
  if (end === undefined || axisOf(outer) !== thicknessAxis(host.attitude)) return undefined;
  return { host: host.id, outer, end };
}
