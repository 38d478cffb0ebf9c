import type { FittedJoint, Half } from '../fit/fit.js';
import { acrossOf } from '../joints/across.js';
import { Bench } from '../joints/bench.js';
import { datumOf } from '../joints/datum.js';
import { type HalfPlan, halfOf } from '../joints/half.js';
import { Rational } from '../number/rational.js';
import type { Meeting } from '../sizes/hosts.js';
import type { Solved } from '../sizes/solved.js';
import { axisOf, isFace, opposite, type Side } from '../spec/sides.js';
import type { JointStatement, PartId, PartSpec } from '../spec/spec.js';
import { cantUnder, type MitredEnd, mitredEnd, namedHosts } from './ends.js';
import { faceOnCant, frameOf, TurnedBench, type TurnedFrame } from './frame.js';
import { laidOn, sameSpan, spanOf } from './span.js';

/** How a turned part meets a host, told in its own frame. */
export type TurnedMeeting =
  | { readonly kind: 'square'; readonly host: PartId; readonly meeting: Meeting }
  | { readonly kind: 'mitre'; readonly host: PartId; readonly end: MitredEnd };

/**
 * How a turned part meets each host of a joint; `undefined` in the place of a host it meets in a way that is not worked
 * out: not a butt joint to the face of a level part with the same cant, nor to such a cant, nor a mitre at an end of it.
 */
export function turnedMeetings(
  solved: Solved,
  joint: JointStatement,
  part: PartSpec,
): readonly (TurnedMeeting | undefined)[] {
  const { planes } = solved.system;
  if (joint.verb === 'mitre') {
    const cant = cantUnder(solved.spec, part);
    return namedHosts(joint).map((named) => {
      const end = cant && mitredEnd(cant, planes.part(named.host), named);
      return end && { kind: 'mitre', host: named.host, end };
    });
  }
  if (joint.verb !== 'butt') return namedHosts(joint).map(() => undefined);
  const square = (host: PartId, hostSide: Side): TurnedMeeting | undefined =>
    planes.part(host)?.attitude === 'level'
      ? {
          kind: 'square',
          host,
          meeting: { host, hostSide, enteringSide: opposite(hostSide), axis: axisOf(hostSide) },
        }
      : undefined;
  return [
    ...joint.between.flatMap(({ low, high }) => [
      low.side === undefined ? square(low.part, 'top') : undefined,
      high.side === undefined ? square(high.part, 'bottom') : undefined,
    ]),
    ...joint.to.map(({ part: host, plane, of }) => {
      if (of === 'cant') return square(host, cantUnder(solved.spec, part)?.corner.includes('rear') ? 'rear' : 'front');
      return of === 'part' && isFace(plane, 'level') ? square(host, plane) : undefined;
    }),
  ];
}

/** Whether a level host has the cant that the turned part stands along, end for end. */
export function hasCantOf(solved: Solved, frame: TurnedFrame, host: PartId): boolean {
  const other = spanOf(solved, host);
  return other !== undefined && sameSpan(other, frame.span);
}

/** Works out a joint between square parts; see `joints/joints.ts`. */
type FitSquare = (
  solved: Solved,
  bench: Bench,
  joint: JointStatement,
  part: PartSpec,
  host: PartSpec,
  meeting: Meeting,
  id: string,
) => FittedJoint;

/** A joint of a turned part, worked out in its own frame; undefined where the two do not meet in a way that is worked out. */
export function fitTurned(
  solved: Solved,
  joint: JointStatement,
  part: PartSpec,
  met: TurnedMeeting,
  id: string,
  fitSquare: FitSquare,
): FittedJoint | undefined {
  const frame = frameOf(solved, part);
  const host = solved.system.planes.part(met.host);
  if (!frame || !host) return undefined;
  if (met.kind === 'mitre') return mitreOf(solved, frame, joint, host, met.end, id, fitSquare);
  if (!hasCantOf(solved, frame, host.id)) return undefined;
  const { turn } = frame.span;
  const face = faceOnCant(frame.span, laidOn(solved.spec, part.id));
  // Across the ends the face in the plane of the cant is what is fixed, whether it is written or not.
  const across = met.meeting.axis === 'z' && !joint.reference;
  const said = across ? { ...joint, reference: { side: face, source: joint.source } } : joint;
  const fitted = fitSquare(frame, new TurnedBench(frame), said, part, host, met.meeting, id);
  const halves = fitted.halves.map((half) => (half.part === host.id ? alongCant(half, turn) : half));
  return { ...fitted, turn, halves };
}

/** No edge of the canted part stands square to its cant, so no fence, spacer or stop holds it: its lines are marked out. */
const alongCant = (half: Half, turn: Half['turn']): Half => ({
  ...half,
  turn,
  spacer: { ...half.spacer, kind: 'mark out', stack: [], off: Rational.ZERO },
  stop: undefined,
  packer: undefined,
});

/**
 * A mitre runs upright, so that lines and datum are told in the cabinet as well as in the turned frame; what lies
 * across it is told in the frame of each part.
 */
function mitreOf(
  solved: Solved,
  frame: TurnedFrame,
  joint: JointStatement,
  host: PartSpec,
  end: MitredEnd,
  id: string,
  fitSquare: FitSquare,
): FittedJoint {
  const { turned, span } = frame;
  const enteringSide: Side = span.left.on === end.outer ? 'left' : 'right';
  const angle = (enteringSide === 'left' ? span.left : span.right).turns / 2;
  // First as if the corner were square: contact, layout and troubles are the same, and what is not is put in its place.
  const asSquare: Meeting = { host: host.id, hostSide: end.end, enteringSide, axis: 'x' };
  const told = { ...joint, outer: { side: span.outer, source: joint.source } };
  const fitted = fitSquare(frame, new TurnedBench(frame), told, turned, host, asSquare, id);
  const base: FittedJoint = {
    ...fitted,
    hostSide: end.end,
    mitre: { entering: span.outer, host: end.outer, angle },
    turn: span.turn,
    halves: [],
  };
  const { machine, connector, zero } = fitted;
  const datum = datumOf(solved, new Bench(solved), joint, 'z');
  if (!machine || !connector || !zero || fitted.trouble.length > 0) return base;
  const inner = joint.reference?.side === 'inner' || joint.reference?.side === opposite(span.outer);
  const from = inner ? 'heel' : 'toe';
  const reach = (side: Side): Side => (inner ? opposite(side) : side);
  const plans: readonly (readonly [Solved, HalfPlan])[] = [
    [frame, planOf(turned, enteringSide, reach(span.outer), from, { outer: span.outer, angle })],
    [solved, planOf(host, end.end, reach(end.outer), from, { outer: end.outer, angle })],
  ];
  const halves = plans.map(([at, plan]) => {
    const contactPlane = at.at(plan.part.id, plan.surface);
    if (contactPlane === undefined) return undefined;
    const acrossAxis = axisOf(plan.mitre?.outer ?? plan.surface);
    const shared = {
      id,
      joint,
      run: 'z' as const,
      normalAxis: axisOf(plan.surface),
      acrossAxis,
      connector,
      machine,
      datum: { ...datum, zero },
      zero,
      referencePlane: contactPlane,
      c: acrossOf(solved.spec, joint, turned, machine, angle),
      lines: fitted.lines,
      contactPlane,
    };
    return halfOf(at, new Bench(at), shared, plan);
  });
  return { ...base, halves: halves.every((half) => half !== undefined) ? (halves as Half[]) : [] };
}

const planOf = (
  part: PartSpec,
  surface: Side,
  reference: Side,
  from: 'toe' | 'heel',
  mitre: HalfPlan['mitre'],
): HalfPlan => ({ part, surface, role: 'mitre', reference, from, mitre });
