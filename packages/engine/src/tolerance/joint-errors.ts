import type { FittedJoint } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { Rational } from '../number/rational.js';
import { axisOf, isHigh, opposite, outward, SIDES, type Side } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { AsMade } from './as-made.js';
import type { Link } from './links.js';
import { less, NOTHING_OFF, type Stack, Sum, single, stacked, times } from './stack.js';
import { isNothing, type Tried } from './tried.js';
import { beyondCant, turnedGap } from './turned-errors.js';

/**
 * What may be off at a joint, mm. `step`: two faces meant to be one, across the joint; `flush`: two edges meant to be
 * one, along it; `place`: where the entering part's reference face lies on its host; `gap`: the opening between the
 * touching sides at the end where it is widest. More than nothing: the entering part stands proud, further from where
 * it is measured from, or open.
 */
export interface JointError {
  readonly kind: 'step' | 'flush' | 'place' | 'gap';
  /** Of a turned part in its own frame. */
  readonly side: Side;
  readonly adds: Tried;
}

/** Everything that may be off at one joint, but for what a mitre's bevels bring. */
export const jointErrors = (made: AsMade, joint: FittedJoint): readonly JointError[] => [
  ...sidesAt(made, joint),
  ...gapAt(made, joint),
];

/** Steps, flushness and place, which need no other joint. */
export function sidesAt(made: AsMade, joint: FittedJoint): readonly JointError[] {
  // Across a mitre the toes meet or miss each other, which is told of them.
  const links = made
    .linksOf(joint)
    .filter(({ aSide }) => (joint.meeting === 'mitre' ? axisOf(aSide) === joint.run : axisOf(aSide) !== joint.axis));
  return links.flatMap((link) => sidesOf(made, joint, link));
}

/** The gap of a joint, where anything can open it. */
export function gapAt(made: AsMade, joint: FittedJoint): readonly JointError[] {
  const adds = gapOf(made, joint);
  return isNothing(adds) ? [] : [{ kind: 'gap', side: joint.enteringSide, adds }];
}

function sidesOf(made: AsMade, joint: FittedJoint, link: Link): readonly JointError[] {
  const axis = axisOf(link.aSide);
  const kind = axis === joint.run ? 'flush' : 'step';
  const found = SIDES.filter((side) => axisOf(side) === axis && meantAsOne(made, joint, side)).map(
    (side) => ({ kind, side, adds: proud(made, joint, link, side) }) as const,
  );
  if (found.length > 0 || kind === 'flush' || joint.halves.length === 0) return found;
  const inside = Rational.of(-outward(link.bSide));
  return [{ kind: 'place', side: link.aSide, adds: { stack: times(link.off(), inside) } }];
}

/** How far the entering part's side stands proud of the same side of its host; of a host's cant, of that and its ends. */
function proud(made: AsMade, joint: FittedJoint, link: Link, side: Side): Tried {
  const sum = new Sum().stack(link.off(), Rational.of(outward(side)));
  const axis = axisOf(side);
  if (link.aSide !== side) sum.stack(made.size(joint.entering, axis));
  if (link.bSide === side) return { stack: sum.done() };
  if (joint.turn && axis === 'x') return beyondCant(made, joint, sum.done());
  return { stack: sum.stack(made.size(joint.host, axis), Rational.of(-1)).done() };
}

function meantAsOne(made: AsMade, { entering, host, turn }: FittedJoint, side: Side): boolean {
  if (turn && axisOf(side) !== 'z') {
    const frame = made.turned.frame(entering);
    const [own, other] = [frame?.at(entering, side), frame?.at(host, side)];
    return own !== undefined && other !== undefined && own.equals(other);
  }
  const [a, b] = [made.part(entering)?.box, made.part(host)?.box];
  const end = isHigh(side) ? 'hi' : 'lo';
  return a !== undefined && b !== undefined && a[end][axisOf(side)].equals(b[end][axisOf(side)]);
}

/**
 * The opening at a butt or mitre: what the part is shorter than the room its hosts leave by the other parts between
 * them, and how far the sawn end is out of square over the length of the joint.
 */
function gapOf(made: AsMade, joint: FittedJoint): Tried {
  if (joint.verb !== 'butt' && joint.verb !== 'mitre') return { stack: NOTHING_OFF };
  const square = squareOf(made, joint);
  if (joint.turn && joint.meeting === 'mitre') return turnedGap(made, joint, square);
  return { stack: stacked(roomOf(made, joint), square) };
}

function roomOf(made: AsMade, joint: FittedJoint): Stack {
  const other = made.acrossFrom(joint);
  if (!other) return NOTHING_OFF;
  const [low, high] = outward(joint.enteringSide) === -1 ? [joint, other] : [other, joint];
  const plane = ({ host, hostSide, enteringSide, meeting }: FittedJoint) => ({
    part: host,
    side: meeting === 'mitre' ? enteringSide : hostSide,
  });
  const beside = besideIt(made, low, high);
  if (beside) return less(made.size(beside, joint.axis), made.size(joint.entering, joint.axis));
  const path = made.held.path(plane(low), plane(high), (part) => part !== joint.entering);
  return path ? less(path.off, made.size(joint.entering, joint.axis)) : NOTHING_OFF;
}

/** More parts at one side of a host than this are not looked through for one that ends where the part ends. */
const MOST_BESIDE = 64;

/** Another part that is butted or mitred between the same two sides: the nearest way from one to the other. */
function besideIt(made: AsMade, low: FittedJoint, high: FittedJoint): PartId | undefined {
  return made
    .at(low)
    .slice(0, MOST_BESIDE)
    .find(
      ({ entering }) =>
        entering !== low.entering &&
        made
          .endsAt(entering, high.enteringSide)
          .some((end) => end.host === high.host && end.hostSide === high.hostSide && end.verb === high.verb),
    )?.entering;
}

function squareOf(made: AsMade, joint: FittedJoint): Stack {
  const { square } = made.tolerances;
  if (!square || square.over.sign() <= 0 || !joint.contact) return NOTHING_OFF;
  const edge = joint.halves.find(({ role }) => role !== 'face');
  // Laid on a cant it is the sawn cant that the face of the part lies on.
  const cant = joint.turn !== undefined && joint.axis === 'y';
  const part = cant ? joint.host : (edge?.part ?? joint.entering);
  const side = edge?.surface ?? joint.enteringSide;
  const tolerance = { plus: square.by, minus: square.by };
  const length = joint.contact.hi.sub(joint.contact.lo).div(square.over);
  const words = () => (cant ? say`cant of ${part} out of square` : say`${side} end of ${part} out of square`);
  const naming = { words, source: square.source };
  return single(made.shared.of(`square ${part} ${cant ? 'cant' : side}`, 'square', tolerance, naming), length);
}

/** What a step would take on if the slots were measured from the other face: the thickness of the part, whole. */
export function fromOtherFace(made: AsMade, joint: FittedJoint, side: Side): Stack {
  const link = made.linksOf(joint).find(({ aSide }) => axisOf(aSide) === axisOf(side));
  const edge = joint.halves.find(({ role }) => role === 'edge')?.part;
  if (!link || !edge || link.aSide !== side) return NOTHING_OFF;
  return made.size(edge, axisOf(opposite(side)));
}
