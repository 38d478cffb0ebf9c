import type { Trouble } from '../fit/fit.js';
import { fixedAlong } from '../sizes/fixed.js';
import { axisOf, opposite, type Side } from '../spec/sides.js';
import type { JointStatement } from '../spec/spec.js';
import type { Kind } from './meeting.js';

/** The faces the slots are measured from, for each half, or what keeps them from being known. */
export interface References {
  readonly entering?: Side | undefined;
  readonly host?: Side | undefined;
  /** Mitre: whether the slots are measured from the toe or the heel. */
  readonly from: 'face' | 'toe' | 'heel';
  readonly trouble?: Trouble | undefined;
}

/**
 * Resolves a joint's reference: as written, else the one face across the run that the joint's facts fix, else
 * (mitre) the outer faces. `outer` and `inner` name the outer side of a mitre, or the fixed face of a corner.
 */
export function referencesOf(joint: JointStatement, kind: Kind, meetingSide: Side): References {
  if (kind.across === undefined) return { from: 'face' };
  const written = joint.reference?.side;
  if (kind.meeting === 'mitre') {
    const outer = joint.outer?.side;
    if (outer === undefined) return { from: 'toe', trouble: 'reference missing' };
    const inner = written === 'inner' || written === opposite(outer) || written === opposite(meetingSide);
    return inner
      ? { entering: opposite(outer), host: opposite(meetingSide), from: 'heel' }
      : { entering: outer, host: meetingSide, from: 'toe' };
  }
  const fixed = fixedAlong(joint.facts, kind.across);
  const only = fixed.length === 1 ? fixed[0] : undefined;
  const side = written === 'outer' ? only : written === 'inner' ? only && opposite(only) : (written ?? only);
  if (side === undefined) return { from: 'face', trouble: 'reference missing' };
  if (axisOf(side) !== kind.across) return { from: 'face', trouble: 'reference not a face' };
  return { entering: side, host: side, from: 'face' };
}
