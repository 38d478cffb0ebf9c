import { constant, type Quantity } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import { highSide, isHigh, lowSide, type Side, thicknessAxis } from '../spec/sides.js';
import type { JointStatement, PartSpec, Spec } from '../spec/spec.js';
import { addTurnedMitre } from '../turned/equations.js';
import { type Builder, minus, NOTHING, negative, plus } from './builder.js';
import { addFact, type RoundedOpenings } from './facts.js';
import { fixedFaces } from './fixed.js';
import { enteringParts, hostsOf, type Meeting, meetings } from './hosts.js';

/** Room left at each end of a loose part when the spec gives none: 1 mm. */
const REST_CLEARANCE = constant(Rational.ONE);
/** How much wider than its panel a groove is when the spec gives no width: 0.2 mm. */
const GROOVE_PLAY = Rational.of(1, 5);

/** Adds everything a joint says about planes: where the parts meet, and its placing facts. */
export function addJoint(build: Builder, spec: Spec, joint: JointStatement, rounded: RoundedOpenings): void {
  const parts = enteringParts(joint, build.planes);
  const met = meetings(joint, build.planes);
  for (const part of parts) {
    if (part.on && joint.verb === 'mitre') {
      addTurnedMitre(build, spec, joint, part);
      continue;
    }
    for (const meeting of met) addMeeting(build, joint, part, meeting);
    if (joint.verb === 'mitre') addToes(build, joint, part, met);
    if (joint.verb === 'groove') addGrooveWidth(build, joint, part);
  }
  const ids = parts.map((part) => part.id);
  for (const fact of joint.facts) addFact(build, joint.id, fact, ids, hostsOf(joint), rounded);
}

/** How far beyond the host's side the entering part's side lies, measured into the host. */
function entry(joint: JointStatement, meeting: Meeting): Quantity {
  const clearance = joint.clearance ?? NOTHING;
  switch (joint.verb) {
    case 'groove':
    case 'house':
      return joint.depth ? minus(joint.depth, clearance) : NOTHING;
    case 'rebate':
      return joint.lap ? minus(joint.lap, clearance) : NOTHING;
    case 'rest':
      return negative(joint.clearance ?? (meeting.plane ? NOTHING : REST_CLEARANCE));
    default:
      return NOTHING;
  }
}

function addMeeting(build: Builder, joint: JointStatement, part: PartSpec, meeting: Meeting): void {
  const own = build.side(part.id, meeting.enteringSide);
  const host = meeting.plane ? build.plane(meeting.plane) : build.side(meeting.host, meeting.hostSide);
  const into = entry(joint, meeting);
  const words = `${joint.verb} ${part.id} to ${host.name}`;
  if (into === NOTHING) build.same(joint.id, own, host, words);
  else build.beyond(joint.id, own, host, meeting.enteringSide, into, words);
}

/** Mitred parts share their outer plane: the toes meet in one line. */
function addToes(build: Builder, joint: JointStatement, part: PartSpec, met: readonly Meeting[]): void {
  const outer = joint.outer?.side;
  if (outer === undefined) return;
  for (const { host } of met) {
    build.same(
      joint.id,
      build.side(part.id, outer),
      build.side(host, outer),
      `${part.id}.${outer} meets the toe of ${host}`,
    );
  }
}

/** The groove's wall behind the part's fixed face lies on that face; the other wall is the width away. */
function addGrooveWidth(build: Builder, joint: JointStatement, part: PartSpec): void {
  const face = grooveFace(joint, part);
  if (face === undefined || joint.width === undefined) return;
  const axis = thicknessAxis(part.attitude);
  const other = isHigh(face) ? lowSide(axis) : highSide(axis);
  const wall = { number: build.planes.groove(part.id, other), name: `${part.id}.groove.${other}` };
  build.beyond(
    joint.id,
    wall,
    build.side(part.id, face),
    other,
    joint.width,
    `groove for ${part.id} ${joint.width.text} wide`,
  );
}

/** The face of the panel that lies against a wall of its groove: the one face this joint fixes. */
function grooveFace(joint: JointStatement, part: PartSpec): Side | undefined {
  const faces = fixedFaces(joint, part);
  return faces.length === 1 ? faces[0] : undefined;
}

/**
 * Walls of the grooves of each grooved part: the fixed face's wall lies on that face, and where no groove
 * statement writes a width the groove is the sheet plus {@link GROOVE_PLAY}.
 */
export function addGrooveWalls(build: Builder, spec: Spec, thicknessOf: (part: PartSpec) => Quantity): void {
  const grooves = spec.statements.filter((s): s is JointStatement => s.kind === 'joint' && s.verb === 'groove');
  const byPart = new Map<string, JointStatement[]>();
  for (const joint of grooves) for (const id of joint.entering) byPart.set(id, [...(byPart.get(id) ?? []), joint]);
  for (const [id, joints] of byPart) {
    const part = build.planes.part(id);
    if (!part) continue;
    const axis = thicknessAxis(part.attitude);
    const face = joints.map((joint) => grooveFace(joint, part)).find((side) => side !== undefined) ?? highSide(axis);
    const other = isHigh(face) ? lowSide(axis) : highSide(axis);
    const wall = (side: Side) => ({ number: build.planes.groove(id, side), name: `${id}.groove.${side}` });
    const source = joints[0]?.id ?? id;
    build.same(source, wall(face), build.side(id, face), `${id} lies against its groove's ${face} wall`);
    const widthWritten = joints.some((joint) => joint.width !== undefined && grooveFace(joint, part) !== undefined);
    if (widthWritten) continue;
    const written = joints.find((joint) => joint.width !== undefined)?.width;
    const width = written ?? plus(thicknessOf(part), constant(GROOVE_PLAY));
    build.beyond(source, wall(other), build.side(id, face), other, width, `groove for ${id}`);
  }
}
