import type { Fit, FittedJoint, FittedPart } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { type Axis, isHigh, thicknessAxis } from '../spec/sides.js';
import type { JointStatement, Spec } from '../spec/spec.js';
import { growth, type Moisture, ruleHolds, USUAL_MOISTURE } from './movement.js';

/** A solid panel that stands in grooves at both ends of its width. */
export interface CapturedPanel {
  readonly kind: 'captured';
  readonly part: FittedPart;
  /** The groove at its lower end, and at its upper one. */
  readonly grooves: readonly [FittedJoint, FittedJoint];
  readonly axis: Axis;
  readonly width: Rational;
  /** By how much it widens at the most moisture, and narrows at the least, mm, ≥ 0. */
  readonly swells: Rational;
  readonly shrinks: Rational;
  /** Room at the bottoms of both grooves, mm. */
  readonly room: Rational;
  /** The shallower of the two grooves, mm. */
  readonly depth: Rational;
  /** How deep the panel still stands in the groove it slips out of first, once it has shrunk and slid away, mm. */
  readonly hold: Rational;
}

/** Two parts that are glued along a joint and move differently along it. */
export interface GluedAcross {
  readonly kind: 'glued';
  readonly joint: FittedJoint;
  /** Length of the joint, mm. */
  readonly length: Rational;
  /** By how much the two strive against each other along it at the worse end of the swing, mm, ≥ 0. */
  readonly differ: Rational;
}

/** What the cabinet says of moisture, or what is usual. */
export function moistureOf(spec: Spec): Moisture {
  return spec.statements.find((statement) => statement.kind === 'moisture') ?? USUAL_MOISTURE;
}

/**
 * Where solid wood works against its joints: panels in grooves, and parts glued across the grain. Nothing where the rule
 * of movement does not hold, or no part is of solid wood. Movement through the thickness, and of the parts that hold a
 * panel, is not reckoned.
 */
export function solidWood(spec: Spec, fit: Fit): readonly (CapturedPanel | GluedAcross)[] {
  const moisture = moistureOf(spec);
  const moving = new Map(
    fit.parts.flatMap((part): [string, FittedPart][] => (solid(spec, part) ? [[part.id, part]] : [])),
  );
  if (moving.size === 0 || !ruleHolds(moisture)) return [];
  return [
    ...[...moving.values()].flatMap((part) => captured(spec, fit, part, moisture) ?? []),
    ...fit.joints.flatMap((joint) => glued(spec, fit, joint, moisture) ?? []),
  ];
}

const solid = (spec: Spec, part: FittedPart): Rational | undefined => spec.shop.materials.get(part.material)?.movement;

/** The axis a part moves along: across its grain, in its face. */
function movesAlong(part: FittedPart): Axis | undefined {
  const through = thicknessAxis(part.attitude);
  return (['x', 'y', 'z'] as const).find((axis) => axis !== through && axis !== part.grain);
}

function captured(spec: Spec, fit: Fit, part: FittedPart, moisture: Moisture): CapturedPanel | undefined {
  const axis = movesAlong(part);
  const coefficient = solid(spec, part);
  const width = axis && part.extent[axis];
  if (!axis || !coefficient || !width) return undefined;
  const grooves = fit.joints.filter(
    (joint) => joint.verb === 'groove' && joint.entering === part.id && joint.axis === axis,
  );
  const low = grooves.find((joint) => !isHigh(joint.enteringSide));
  const high = grooves.find((joint) => isHigh(joint.enteringSide));
  const [atLow, atHigh] = [low && grooveOf(spec, low), high && grooveOf(spec, high)];
  if (!low || !high || !atLow || !atHigh) return undefined;
  const swells = positive(growth(width, coefficient, moisture.made, moisture.most));
  const shrinks = positive(growth(width, coefficient, moisture.made, moisture.least).neg());
  const leastHold = Rational.min(
    atLow.depth.sub(atLow.clearance).sub(atHigh.clearance),
    atHigh.depth.sub(atHigh.clearance).sub(atLow.clearance),
  );
  return {
    kind: 'captured',
    part,
    grooves: [low, high],
    axis,
    width,
    swells,
    shrinks,
    room: atLow.clearance.add(atHigh.clearance),
    depth: Rational.min(atLow.depth, atHigh.depth),
    hold: leastHold.sub(shrinks),
  };
}

function grooveOf(
  spec: Spec,
  joint: FittedJoint,
): { readonly depth: Rational; readonly clearance: Rational } | undefined {
  const statement = spec.statements.find(
    (one): one is JointStatement => one.kind === 'joint' && one.id === joint.statement,
  );
  if (!statement?.depth) return undefined;
  return { depth: statement.depth.value, clearance: statement.clearance?.value ?? Rational.ZERO };
}

/** A joint with connectors, or a housing, is glued along its run. */
function glued(spec: Spec, fit: Fit, joint: FittedJoint, moisture: Moisture): GluedAcross | undefined {
  const { contact, run } = joint;
  if (!contact || !run || (joint.halves.length === 0 && joint.verb !== 'house')) return undefined;
  const along = (id: string): Rational => {
    const part = fit.parts.find((one) => one.id === id);
    const coefficient = part && movesAlong(part) === run ? solid(spec, part) : undefined;
    return coefficient ?? Rational.ZERO;
  };
  const differ = along(joint.entering).sub(along(joint.host)).abs();
  if (differ.isZero()) return undefined;
  const length = contact.hi.sub(contact.lo);
  const swing = Rational.max(moisture.most.sub(moisture.made), moisture.made.sub(moisture.least));
  return { kind: 'glued', joint, length, differ: growth(length, differ, Rational.ZERO, swing).abs() };
}

const positive = (r: Rational): Rational => (r.sign() < 0 ? Rational.ZERO : r);
