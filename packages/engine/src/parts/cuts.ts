import type { Box, Cut, FittedJoint, Half } from '../fit/fit.js';
import { notchRange } from '../joints/contact.js';
import { type Range, rangeOf } from '../joints/place.js';
import { Rational } from '../number/rational.js';
import { enteringParts, type Meeting, meetings } from '../sizes/hosts.js';
import type { Solved } from '../sizes/solved.js';
import {
  AXES,
  type Axis,
  axisOf,
  highSide,
  isHigh,
  lowSide,
  outward,
  type Side,
  thicknessAxis,
  thirdAxis,
} from '../spec/sides.js';
import type { JointStatement, NotchStatement, PartId, PartSpec } from '../spec/spec.js';

/** Every cut of every part, by part: slots from the joints, then grooves, rebates, housings, bevels and notches. */
export function cutsByPart(solved: Solved, joints: readonly FittedJoint[]): ReadonlyMap<PartId, readonly Cut[]> {
  const cuts = new Map<PartId, Cut[]>();
  const add = (part: PartId, cut: Cut): void => {
    const list = cuts.get(part);
    if (list) list.push(cut);
    else cuts.set(part, [cut]);
  };
  for (const joint of joints) {
    for (const half of joint.halves) for (const cut of slotCuts(joint, half)) add(half.part, cut);
    if (joint.mitre) {
      const { id, source, mitre } = joint;
      const bevel = (side: Side, outer: Side): Cut => ({
        kind: 'bevel',
        side,
        outer,
        angle: mitre.angle,
        joint: id,
        source,
      });
      add(joint.entering, bevel(joint.enteringSide, mitre.entering));
      add(joint.host, bevel(joint.hostSide, mitre.host));
    }
  }
  for (const statement of solved.spec.statements) {
    if (statement.kind === 'notch') addNotches(solved, statement, add);
    if (statement.kind === 'joint') addRecesses(solved, statement, add);
  }
  return cuts;
}

function slotCuts(joint: FittedJoint, half: Half): readonly Cut[] {
  const { machine, connector, run } = joint;
  if (!machine || !connector || !run) return [];
  const kind = machine.kind === 'disc' ? 'disc' : machine.kind === 'drill' ? 'hole' : 'mortise';
  return half.slots.map((slot) => ({
    kind,
    slot: slot.id,
    turn: half.turn,
    surface: half.surface,
    centre: slot.centre,
    run,
    diameter: machine.diameter,
    width: machine.kerf,
    depth: half.depth,
    length: slot.length,
    fromToe: half.role === 'mitre' && half.from.kind === 'toe' ? half.across : undefined,
    joint: joint.id,
    source: joint.source,
  }));
}

/** The walls a recess has across its run: a groove's own walls, else the entering part's faces. */
function walls(solved: Solved, joint: JointStatement, part: PartSpec, axis: Axis): Range | undefined {
  if (joint.verb !== 'groove') return rangeOf(solved, part.id, axis);
  const lo = solved.groove(part.id, lowSide(axis));
  const hi = solved.groove(part.id, highSide(axis));
  if (!lo || !hi) return undefined;
  return lo.le(hi) ? { lo, hi } : { lo: hi, hi: lo };
}

/**
 * Grooves, rebates and housings are cut as far as the entering part and its clearance reach, and no further than
 * the host; a stopped groove ends that far inside both ends of its host.
 */
function addRecesses(solved: Solved, joint: JointStatement, add: (part: PartId, cut: Cut) => void): void {
  const kind = ({ groove: 'groove', rebate: 'rebate', house: 'housing' } as const)[
    joint.verb as 'groove' | 'rebate' | 'house'
  ];
  if (kind === undefined) return;
  const depth = (joint.verb === 'rebate' ? joint.lap : joint.depth)?.value;
  if (!depth || depth.sign() <= 0) return;
  for (const part of enteringParts(joint, solved.system.planes)) {
    for (const meeting of meetings(joint, solved.system.planes)) {
      const recess = recessOf(solved, joint, part, meeting, depth);
      if (recess)
        add(meeting.host, { kind, surface: meeting.hostSide, source: joint.source, joint: joint.id, ...recess });
    }
  }
}

function recessOf(
  solved: Solved,
  joint: JointStatement,
  part: PartSpec,
  meeting: Meeting,
  depth: Rational,
): { readonly box: Box; readonly run: Axis } | undefined {
  const thick = thicknessAxis(part.attitude);
  const run = thirdAxis(meeting.axis, thick);
  const surface = solved.at(meeting.host, meeting.hostSide);
  if (run === undefined || surface === undefined) return undefined;
  const host = rangeOf(solved, meeting.host, run);
  const own = rangeOf(solved, part.id, run);
  const across = walls(solved, joint, part, thick);
  if (!host || !own || !across) return undefined;
  const bottom = surface.sub(depth.mul(Rational.of(outward(meeting.hostSide))));
  const ranges: Record<Axis, Range> = { x: across, y: across, z: across };
  ranges[meeting.axis] = isHigh(meeting.hostSide) ? { lo: bottom, hi: surface } : { lo: surface, hi: bottom };
  ranges[run] = alongHost(joint, own, host);
  if (AXES.some((axis) => ranges[axis].lo.ge(ranges[axis].hi))) return undefined;
  return { box: boxOf(ranges), run };
}

function alongHost(joint: JointStatement, own: Range, host: Range): Range {
  if (joint.stopped) return { lo: host.lo.add(joint.stopped.value), hi: host.hi.sub(joint.stopped.value) };
  const room = joint.clearance?.value ?? Rational.ZERO;
  return { lo: Rational.max(host.lo, own.lo.sub(room)), hi: Rational.min(host.hi, own.hi.add(room)) };
}

const boxOf = (ranges: Record<Axis, Range>): Box => ({
  lo: { x: ranges.x.lo, y: ranges.y.lo, z: ranges.z.lo },
  hi: { x: ranges.x.hi, y: ranges.y.hi, z: ranges.z.hi },
});

function addNotches(solved: Solved, statement: NotchStatement, add: (part: PartId, cut: Cut) => void): void {
  const [first, second] = statement.corner;
  const run = thirdAxis(axisOf(first), axisOf(second));
  if (run === undefined) return;
  for (const part of statement.parts) {
    const through = rangeOf(solved, part, run);
    const a = notchRange(solved, part, first, statement.corner);
    const b = notchRange(solved, part, second, statement.corner);
    if (!through || !a || !b) continue;
    const ranges: Record<Axis, Range> = { x: through, y: through, z: through };
    ranges[axisOf(first)] = a;
    ranges[axisOf(second)] = b;
    add(part, { kind: 'notch', box: boxOf(ranges), surface: first, run, source: statement.source });
  }
}
