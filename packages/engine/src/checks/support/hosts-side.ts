import type { FittedJoint } from '../../fit/fit.js';
import { say, type Text } from '../../fit/text.js';
import { axisOf, type Side } from '../../spec/sides.js';
import type { PartId } from '../../spec/spec.js';
import type { CheckContext } from '../check.js';
import { partNames } from './names.js';

/** The side of its hosts that a side of a part is meant to be one with; of a turned part's hosts the cant or an end of it. */
export function sideOfHosts(context: CheckContext, joint: FittedJoint, side: Side, hosts: readonly PartId[]): Text {
  const names = partNames(context, hosts);
  if (!joint.turn || axisOf(side) === 'z') return say`${side} of ${names}`;
  return axisOf(side) === 'x' ? say`${side} end of the cant of ${names}` : say`cant of ${names}`;
}
