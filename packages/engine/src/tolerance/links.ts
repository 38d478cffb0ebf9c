import type { FittedJoint, Half } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { lazily } from '../lazily.js';
import { Rational } from '../number/rational.js';
import { fixedAlong } from '../sizes/fixed.js';
import { AXES, type Axis, axisOf, outward, type Side } from '../spec/sides.js';
import type { JointStatement, PartId } from '../spec/spec.js';
import { faceOnCant } from '../turned/frame.js';
import { laidOn } from '../turned/span.js';
import type { AsMade } from './as-made.js';
import { addAcross, addAlong } from './bench-errors.js';
import { contributor } from './contributor.js';
import { NOTHING_OFF, type Stack, Sum, single } from './stack.js';

/** Two planes that a joint holds at their distance: `off` tells how far `a` comes beyond `b`, along the axis. */
export interface Link {
  readonly a: PartId;
  readonly aSide: Side;
  readonly b: PartId;
  readonly bSide: Side;
  readonly off: () => Stack;
}

/**
 * What a joint holds together, in the frame that the joint is told in: the touching sides, the planes its slots are measured from across the joint, and the
 * datum edges along it. Where nothing is milled, parts are put where they belong by eye, or lie in a groove, rebate or
 * housing. A loose part, or one with room in its groove, is held by neither.
 */
export function linksOf(made: AsMade, joint: FittedJoint): readonly Link[] {
  const [entering, host] = joint.halves;
  const statement = made.statement(joint.statement);
  const touching = touch(made, joint, statement);
  if (!entering || !host) return [...touching, ...byHand(made, joint, statement)];
  const link = (aSide: Side, bSide: Side, way: 'across' | 'along'): Link => ({
    a: joint.entering,
    aSide,
    b: joint.host,
    bSide,
    off: lazily(() => planes(made, joint, way, entering, host)),
  });
  const along = link(entering.datum, host.datum, 'along');
  if (joint.meeting === 'mitre') return [...touching, along];
  return [...touching, link(entering.from.side, host.from.side, 'across'), along];
}

/**
 * How far the entering part's plane comes beyond its host's: slots that lie further in in the host take the entering
 * part in with them, slots that lie further in in the entering part bring it out.
 */
function planes(made: AsMade, joint: FittedJoint, way: 'across' | 'along', entering: Half, host: Half): Stack {
  const side = way === 'across' ? entering.from.side : entering.datum;
  const other = way === 'across' ? host.from.side : host.datum;
  const stated = statedAt(made, joint, side, other);
  const sum = new Sum().stack(stated);
  const outside = Rational.of(outward(side));
  const [own, against] = [
    { sum, factor: outside },
    { sum, factor: outside.neg() },
  ];
  if (way === 'across') {
    addAcross(own, made, joint, entering, stated !== NOTHING_OFF);
    addAcross(against, made, joint, host, stated !== NOTHING_OFF);
    return sum.done();
  }
  addAlong(own, made, joint, entering);
  addAlong(against, made, joint, host);
  if (made.fit.milled === 'before banding') sum.stack(bandsAt(made, joint, side));
  return sum.done();
}

/** What the text of a joint writes of the distance of two planes; of a turned part it writes heights alone. */
const statedAt = (made: AsMade, joint: FittedJoint, own: Side, other: Side): Stack =>
  joint.turn && axisOf(own) !== 'z'
    ? NOTHING_OFF
    : made.statedBetween({ part: joint.entering, side: own }, { part: joint.host, side: other }, () => joint.id, joint);

/** Slots milled before banding are measured from edges that their bands still have to come onto. */
function bandsAt(made: AsMade, joint: FittedJoint, side: Side): Stack {
  const [part, host] = [made.part(joint.entering), made.part(joint.host)];
  const outside = Rational.of(outward(side));
  const sum = new Sum();
  if (part) sum.add(made.sizes.band(part, side), outside);
  // No band is glued on a cant.
  if (host && (!joint.turn || axisOf(side) === 'z')) sum.add(made.sizes.band(host, side), outside.neg());
  return sum.done();
}

/** The sides that touch; a mitre's parts share the plane their toe lies on as well. */
function touch(made: AsMade, joint: FittedJoint, statement: JointStatement | undefined): readonly Link[] {
  const { entering: a, host: b, enteringSide } = joint;
  const link = (aSide: Side, bSide: Side, off: () => Stack): Link => ({ a, aSide, b, bSide, off: lazily(off) });
  if (joint.meeting === 'mitre') {
    const outer = statement?.outer?.side;
    const toes = outer === undefined ? [enteringSide] : [enteringSide, outer];
    return toes.map((side) => link(side, side, () => NOTHING_OFF));
  }
  if (joint.verb === 'rest' || floats(joint, statement)) return [];
  // A wall of a groove or notch is no side of the part that the joint is with.
  const named = statement?.to.find(({ part, plane }) => part === b && plane === joint.hostSide);
  if (named && named.of !== 'part') return [];
  return [link(enteringSide, joint.hostSide, () => cutOff(made, joint, 'depth'))];
}

const floats = ({ verb }: FittedJoint, statement: JointStatement | undefined): boolean =>
  verb === 'groove' && statement?.clearance !== undefined && statement.clearance.value.sign() > 0;

const CUT: readonly string[] = ['groove', 'house', 'rebate'];

/** A joint without slots: across and along, by the first side its facts fix. */
function byHand(made: AsMade, joint: FittedJoint, statement: JointStatement | undefined): readonly Link[] {
  if (joint.verb === 'rest' || !statement) return [];
  return AXES.filter((axis) => axis !== joint.axis).flatMap((axis) => {
    const side = joint.turn && axis !== 'z' ? onCant(made, joint, axis) : fixedAlong(statement.facts, axis)[0];
    if (side === undefined) return [];
    const off = () => {
      const stated = statedAt(made, joint, side, side);
      return stated === NOTHING_OFF ? placed(made, joint, axis) : stated;
    };
    return [{ a: joint.entering, aSide: side, b: joint.host, bSide: side, off: lazily(off) }];
  });
}

/** A turned part is put flush with the cant and with the left end of it; where it is mitred, its toes tell where it comes. */
function onCant(made: AsMade, joint: FittedJoint, axis: Axis): Side | undefined {
  if (joint.meeting === 'mitre') return undefined;
  if (axis === 'x') return 'left';
  const frame = made.turned.frame(joint.entering);
  return frame && faceOnCant(frame.span, laidOn(made.spec, joint.entering));
}

function placed(made: AsMade, joint: FittedJoint, axis: Axis): Stack {
  if (CUT.includes(joint.verb) && axis !== joint.run) return cutOff(made, joint, 'place');
  const { line } = made.tolerances;
  const naming = {
    id: () => `line by hand ${joint.id} ${axis}`,
    words: () => say`${joint.entering} put in its place on ${joint.host} by eye`,
    source: line?.source,
  };
  return single(contributor('line', line?.tolerance, naming));
}

function cutOff(made: AsMade, joint: FittedJoint, what: 'depth' | 'place'): Stack {
  if (!CUT.includes(joint.verb)) return NOTHING_OFF;
  const { cuts } = made.tolerances;
  const name = joint.verb === 'house' ? 'housing' : joint.verb;
  const naming = {
    id: () => `cut ${what} ${joint.id}`,
    words: () => say`${what} of the ${name} in ${joint.host} for ${joint.entering}`,
    source: cuts?.source,
  };
  return single(contributor('cuts', cuts?.tolerance, naming));
}
