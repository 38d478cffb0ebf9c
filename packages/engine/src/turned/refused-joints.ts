import { say, type Text } from '../fit/text.js';
import { hostsOf } from '../sizes/hosts.js';
import type { Solved } from '../sizes/solved.js';
import { opposite } from '../spec/sides.js';
import type { JointStatement, PartId, PartSpec } from '../spec/spec.js';
import { cantUnder, namedHosts } from './ends.js';
import { faceOnCant, frameOf } from './frame.js';
import { hasCantOf, turnedMeetings } from './joints.js';
import type { Refused } from './refused.js';
import { laidOn } from './span.js';

/** Joints with a turned part, or with a cant, that are not worked out. */
export function* refusedJoints(solved: Solved, turned: ReadonlyMap<PartId, PartSpec>): Generator<Refused> {
  for (const joint of solved.spec.statements) {
    if (joint.kind !== 'joint') continue;
    const refuse = (part: PartId, message: Text, cure: Text): Refused => ({
      message,
      cure,
      source: joint.source,
      part,
      statement: joint.id,
    });
    for (const id of joint.entering) {
      const part = turned.get(id);
      if (part) yield* ofTurned(solved, joint, part, refuse);
      else yield* ofSquare(joint, id, turned, refuse);
    }
  }
}

type Refuse = (part: PartId, message: Text, cure: Text) => Refused;

/** A square part may meet neither a turned one nor a cant: it would have to be sawn at the angle of the cant. */
function* ofSquare(
  joint: JointStatement,
  id: PartId,
  turned: ReadonlyMap<PartId, PartSpec>,
  refuse: Refuse,
): Generator<Refused> {
  const host = hostsOf(joint).find((other) => turned.has(other));
  if (host !== undefined) {
    yield refuse(
      host,
      say`${id} enters ${host}, which stands at an angle to it`,
      say`Write it the other way about if it is ${host} that meets ${id}: butt ${host} to a face of a level part with the same cant, or mitre ${host} to the part beside it.`,
    );
  }
  const cant = joint.to.find((plane) => plane.of === 'cant');
  if (cant) {
    yield refuse(
      id,
      say`${id} does not stand along ${cant.part}.cant, so it meets it in a line and not in a plane`,
      say`Declare it on the cant: part ${id} : facing … on ${cant.part}.cant.`,
    );
  }
}

function* ofTurned(solved: Solved, joint: JointStatement, part: PartSpec, refuse: Refuse): Generator<Refused> {
  const { id } = part;
  const under = part.on?.part ?? '';
  const hosts = joint.verb === 'mitre' ? namedHosts(joint).map(({ host }) => host) : undefined;
  const met = turnedMeetings(solved, joint, part);
  if (joint.verb !== 'butt' && joint.verb !== 'mitre') {
    yield refuse(
      id,
      say`${id} is turned, and a ${joint.verb} of a turned part is not worked out`,
      say`Butt it to the level parts above and below it, and mitre it to the parts beside it.`,
    );
    return;
  }
  if (joint.datum?.plane) {
    yield refuse(
      id,
      say`${id} is turned, and no plane that is written lies square to its run`,
      say`Name a side as the datum: ${joint.verb === 'mitre' ? 'datum bottom or datum top' : 'datum left or datum right'}.`,
    );
  }
  const frame = frameOf(solved, part);
  const wrong = met.indexOf(undefined);
  if (wrong >= 0 && joint.verb === 'mitre') yield offCorner(solved, joint, part, hosts?.[wrong] ?? '', refuse);
  else if (wrong >= 0) {
    yield refuse(
      id,
      say`${id} is turned, and meets only level parts square: their faces, or a cant it is laid on`,
      say`Butt it between the level parts above and below it, as in: butt ${id} between ${under} and …; or to ${under}.cant.`,
    );
  }
  for (const one of met) {
    if (one?.kind !== 'square' || !frame || hasCantOf(solved, frame, one.host)) continue;
    yield refuse(
      id,
      say`${one.host} has no cant that runs where that of ${under} does, end for end, so ${id} has no edge of it to be measured from`,
      say`Give ${one.host} the same cant as ${under}, or hold ${id} to ${under} only.`,
    );
  }
  if (joint.verb === 'mitre' && laidOn(solved.spec, id)) {
    yield refuse(
      id,
      say`${id} is laid on ${under}.cant from outside, so the mitres at its ends meet beyond the cant, in points that no written size gives`,
      say`Let it stand on ${under} instead, with its outer face in the plane of the cant (butt ${id} between …), or leave its ends square.`,
    );
  }
  const written = joint.reference?.side;
  if (
    frame &&
    joint.verb === 'butt' &&
    written &&
    met.some((one) => one?.kind === 'square' && one.meeting.axis === 'z')
  ) {
    const face = faceOnCant(frame.span, laidOn(solved.spec, id));
    if (written !== face && written !== 'outer') {
      yield refuse(
        id,
        say`the ${opposite(face)} of ${id} lies in no plane of the parts it meets, so their slots cannot be measured from it`,
        say`Measure from the cant: reference ${face}, which holds if nothing is written.`,
      );
    }
  }
}

/** A host that does not meet the turned part at half the turn of the outline. */
function offCorner(solved: Solved, joint: JointStatement, part: PartSpec, host: PartId, refuse: Refuse): Refused {
  const cant = cantUnder(solved.spec, part);
  const [a, b] = cant?.corner ?? ['front', 'right'];
  const named = namedHosts(joint).find((one) => one.host === host);
  const how =
    named?.outer === undefined
      ? say`no outer side of ${host} is named`
      : say`${host}.${named.outer} does not run through an end of ${part.on?.part ?? ''}.cant with ${host} standing behind it`;
  return refuse(
    part.id,
    say`${part.id} and ${host} cannot be mitred at half the turn between them: ${how}`,
    say`Name the side that runs into the cant, ${standing(a)} or ${standing(b)}, as in: mitre ${part.id} to ${host}.${a}.`,
  );
}

const standing = (side: string): string =>
  side === 'left' || side === 'right' ? `the ${side} of an upright part` : `the ${side} of a facing part`;
