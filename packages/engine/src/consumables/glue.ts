import type { Box, Fit, FittedJoint, FittedPart } from '../fit/fit.js';
import { mitreFace } from '../geometry/mitre.js';
import type { Bounded } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import { AXES, type Axis, thicknessAxis, thirdAxis } from '../spec/sides.js';
import type { Connector, Shop } from '../spec/stock.js';
import { connectorsIn } from './connectors.js';
import { isGlued } from './glued.js';

/** Glue lines of a cabinet, mm². */
export interface GlueAreas {
  /** Where parts touch: butted, mitred, in housings and rebates. */
  readonly faces: Rational;
  /** The sides of connectors that stand in slots, mortises and holes. */
  readonly connectors: Rational;
  /** Between the layers of parts that are glued up from several. */
  readonly layers: Rational;
}

/**
 * The glue lines of a cabinet. Exact where they are rational. A mitre's face and what is round about a connector are taken a
 * little larger, never smaller. The mouths of slots are not taken off the faces. What is not glued is left out (`isGlued`),
 * and so are bands, which take a glue of their own, and joints whose sizes are not fixed.
 */
export function glueAreas({ joints, parts }: Pick<Fit, 'joints' | 'parts'>, shop: Pick<Shop, 'materials'>): GlueAreas {
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const glued = joints.filter(isGlued);
  const faceOf = (joint: FittedJoint): Rational => {
    const [entering, host] = [partOf.get(joint.entering), partOf.get(joint.host)];
    return entering && host ? faceArea(joint, entering, host) : Rational.ZERO;
  };
  return {
    faces: Rational.sum(glued.map(faceOf)),
    connectors: Rational.sum(
      glued.map((joint) =>
        joint.connector ? connectorArea(joint.connector).mul(Rational.of(connectorsIn(joint))) : Rational.ZERO,
      ),
    ),
    layers: Rational.sum(parts.map((part) => layersArea(part, shop))),
  };
}

/** Where the two parts of a joint touch, mm². */
function faceArea(joint: FittedJoint, entering: FittedPart, host: FittedPart): Rational {
  const { axis, contact, mitre, run, verb } = joint;
  if (!contact || !run) return flatArea(joint, entering.box, host.box);
  const length = contact.hi.sub(contact.lo);
  const thickness = entering.extent[thicknessAxis(entering.attitude)];
  if (mitre) return thickness ? length.mul(above(mitreFace(thickness, mitre.angle))) : Rational.ZERO;
  if (verb !== 'butt' && verb !== 'rest') return recessArea(joint, entering, host).mul(length);
  const across = thirdAxis(axis, run);
  if (!across) return Rational.ZERO;
  // A turned part is told in its own frame, and its edge is as wide as it is thick.
  if (joint.turn) return (entering.extent[across] ?? Rational.ZERO).mul(length);
  return overlap(entering.box, host.box, across).mul(length);
}

/** Two faces, or two edges that cross: what their boxes have in common beside the axis they meet on. */
function flatArea({ axis, trouble, turn }: FittedJoint, entering: Box | undefined, host: Box | undefined): Rational {
  if (turn || trouble.includes('no contact')) return Rational.ZERO;
  const [first, second] = AXES.filter((one) => one !== axis).map((one) => overlap(entering, host, one));
  return first && second ? first.mul(second) : Rational.ZERO;
}

/**
 * How much of a recess the entering part touches for each mm of its run: the bottom, if it reaches it, both walls of a groove
 * or housing, the one wall of a rebate.
 */
function recessArea(
  { axis, hostSide, statement, verb }: FittedJoint,
  entering: FittedPart,
  host: FittedPart,
): Rational {
  const thick = thicknessAxis(entering.attitude);
  for (const cut of host.cuts) {
    if (cut.kind !== 'groove' && cut.kind !== 'housing' && cut.kind !== 'rebate') continue;
    if (cut.joint !== statement || cut.surface !== hostSide) continue;
    if (AXES.some((one) => overlap(entering.box, cut.box, one).isZero())) continue;
    const deep = overlap(entering.box, cut.box, axis);
    const bottom = deep.equals(cut.box.hi[axis].sub(cut.box.lo[axis]))
      ? overlap(entering.box, cut.box, thick)
      : Rational.ZERO;
    return bottom.add(verb === 'rebate' ? deep : deep.mul(Rational.TWO));
  }
  return Rational.ZERO;
}

/** π, a little above: 355/113 is 3.141 592 92. */
const PI = Rational.of(355, 113);

/**
 * The sides of a connector that touch the walls of its slots, both halves together, mm². A biscuit is taken for a rectangle,
 * its rounded ends not taken off; a loose tenon is flat with round edges; a dowel round. Their ends touch nothing.
 */
export function connectorArea({ across, along, shape, thickness }: Connector): Rational {
  if (shape === 'dowel') return PI.mul(along).mul(across);
  if (shape === 'biscuit') return Rational.TWO.mul(along).mul(across);
  const flat = Rational.max(Rational.ZERO, along.sub(thickness));
  return Rational.TWO.mul(flat).add(PI.mul(thickness)).mul(across);
}

/** Between the layers of a part, as these are cut before they are trimmed. */
function layersArea({ cutSize, material }: FittedPart, { materials }: Pick<Shop, 'materials'>): Rational {
  const { layers, oversize = Rational.ZERO } = materials.get(material) ?? {};
  if (!cutSize || !layers || layers.length < 2) return Rational.ZERO;
  const one = cutSize.length.add(oversize).mul(cutSize.width.add(oversize));
  return one.mul(Rational.of(layers.length - 1));
}

/** The common stretch of two boxes along an axis, mm; 0 where they have none. */
function overlap(a: Box | undefined, b: Box | undefined, axis: Axis): Rational {
  if (!a || !b) return Rational.ZERO;
  const common = Rational.min(a.hi[axis], b.hi[axis]).sub(Rational.max(a.lo[axis], b.lo[axis]));
  return common.sign() > 0 ? common : Rational.ZERO;
}

/** The next thousandth above a length that is known within its bound. */
const above = ({ value, error }: Bounded): Rational => Rational.of(Math.floor((value + error) * 1000) + 1, 1000);
