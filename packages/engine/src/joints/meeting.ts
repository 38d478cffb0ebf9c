import type { FittedJoint } from '../fit/fit.js';
import type { Meeting } from '../sizes/hosts.js';
import { type Axis, axisOf, isFace, type Side, thicknessAxis, thirdAxis } from '../spec/sides.js';
import type { JointStatement, PartSpec } from '../spec/spec.js';

/** Which halves a joint has and which way its slots are strung; follows from how the parts stand. */
export interface Kind {
  readonly meeting: FittedJoint['meeting'];
  readonly run: Axis | undefined;
  /** Axis of the edge part's thickness, across the run. */
  readonly across: Axis | undefined;
  readonly enteringRole: 'edge' | 'face' | 'mitre';
  readonly hostRole: 'edge' | 'face' | 'mitre';
  /** Both are edges, of parts that stand differently. */
  readonly crossed: boolean;
}

export function kindOf(joint: JointStatement, part: PartSpec, host: PartSpec, meeting: Meeting): Kind {
  if (joint.verb === 'mitre') {
    const outer = joint.outer ? axisOf(joint.outer.side) : thicknessAxis(part.attitude);
    return {
      meeting: 'mitre',
      run: thirdAxis(meeting.axis, outer),
      across: outer,
      enteringRole: 'mitre',
      hostRole: 'mitre',
      crossed: false,
    };
  }
  const enteringRole = role(meeting.enteringSide, part);
  const hostRole = role(meeting.hostSide, host);
  const edgePart = enteringRole === 'edge' ? part : host;
  const across = thicknessAxis(edgePart.attitude);
  if (enteringRole === 'face' && hostRole === 'face')
    return { meeting: 'face to face', run: undefined, across: undefined, enteringRole, hostRole, crossed: false };
  const edges = enteringRole === 'edge' && hostRole === 'edge';
  return {
    meeting: edges ? 'edge to edge' : 'edge to face',
    run: thirdAxis(meeting.axis, across),
    across,
    enteringRole,
    hostRole,
    crossed: edges && part.attitude !== host.attitude,
  };
}

const role = (side: Side, part: PartSpec): 'edge' | 'face' => (isFace(side, part.attitude) ? 'face' : 'edge');
