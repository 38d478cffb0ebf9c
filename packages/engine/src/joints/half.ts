import type { Half, Line, Slot } from '../fit/fit.js';
import { mitreFace } from '../geometry/mitre.js';
import { type Bounded, boundedOf } from '../number/bounded.js';
import type { Rational } from '../number/rational.js';
import type { Solved } from '../sizes/solved.js';
import { type Axis, axisOf, outward, type Side, thicknessAxis } from '../spec/sides.js';
import type { JointStatement, PartSpec } from '../spec/spec.js';
import type { Connector, Machine } from '../spec/stock.js';
import type { Bench } from './bench.js';
import { coordinateAt, type Datum, inward } from './datum.js';
import { fenceHand, heldMitre, heldSquare } from './hand.js';

/** Everything the two halves of a joint share. */
export interface Shared {
  readonly id: string;
  readonly joint: JointStatement;
  readonly run: Axis;
  readonly normalAxis: Axis;
  /** Axis across the run, that of the reference. */
  readonly acrossAxis: Axis;
  readonly connector: Connector;
  readonly machine: Machine;
  readonly datum: Datum;
  readonly zero: Rational;
  /** Coordinate of the reference plane across the run (square joints). */
  readonly referencePlane: Rational;
  /** Slot's distance from the reference, into the edge part. */
  readonly c: Rational;
  readonly lines: readonly Line[];
  /** Coordinate of the touching plane (a mitre: of the entering part's toe). */
  readonly contactPlane: Rational;
}

/** What is particular to one half. */
export interface HalfPlan {
  readonly part: PartSpec;
  readonly surface: Side;
  readonly role: 'edge' | 'face' | 'mitre';
  readonly reference: Side;
  readonly from: 'face' | 'toe' | 'heel';
  /** Of a mitre half: the side its toe lies on, and how far off square it is sawn. */
  readonly mitre?: Half['mitre'];
}

/** Works out one half; undefined while a plane it needs is not fixed. */
export function halfOf(solved: Solved, bench: Bench, shared: Shared, plan: HalfPlan): Half | undefined {
  const { datum, zero, run } = shared;
  const { part } = plan;
  const own = bench.at(part.id, datum.side);
  if (own === undefined) return undefined;
  const setback = inward(datum.side, zero, own);
  const jig = solved.spec.shop.jig;
  const stray = solved.stray(
    datum.zeroPart === undefined ? undefined : solved.system.planes.side(datum.zeroPart, datum.side),
    solved.system.planes.side(part.id, datum.side),
  );
  const tolerance = outward(datum.side) === 1 ? stray : { plus: stray.minus, minus: stray.plus };
  const placed = placeAcross(solved, bench, shared, plan);
  if (!placed) return undefined;
  const into = plan.role === 'face' ? 'face' : 'edge';
  const depth = shared.connector.plunge[into];
  const length = bench.mouth(shared.connector, shared.machine, into);
  const used = shared.lines.filter((line) => line.use === 'used');
  const slots: Slot[] = used.map(({ fromZero }, i) => {
    const centre = { x: shared.contactPlane, y: shared.contactPlane, z: shared.contactPlane };
    centre[run] = coordinateAt(datum.side, zero, fromZero);
    centre[shared.acrossAxis] = placed.acrossCoordinate;
    return {
      id: `${shared.id} ${part.id} ${i + 1}`,
      part: part.id,
      joint: shared.id,
      number: i + 1,
      fromZero,
      fromDatum: fromZero.sub(setback),
      fromReference: placed.across,
      centre,
      length,
    };
  });
  const held =
    plan.role === 'mitre'
      ? heldMitre(plan.surface, plan.mitre?.outer ?? plan.reference, plan.from === 'heel' ? 'heel' : 'toe')
      : heldSquare(plan.surface, plan.reference, plan.role);
  const thickness = solved.extent(part.id, thicknessAxis(part.attitude));
  return {
    part: part.id,
    surface: plan.surface,
    role: plan.role,
    mitre: plan.mitre,
    datum: datum.side,
    setback,
    spacer: bench.spacer(setback, tolerance, shared.joint.spacerCut !== undefined),
    from: placed.from,
    across: placed.across,
    stop: placed.stop,
    packer: jig?.hold === 'beam' ? thickness : undefined,
    hand: fenceHand(held, datum.side, solved.spec.shop.pose),
    depth,
    slots,
  };
}

interface Across {
  readonly from: Half['from'];
  readonly across: Rational;
  readonly acrossCoordinate: Rational;
  readonly stop?: Half['stop'];
}

/** Where the slots lie across the run: from a reference face, an end with a stop, or a toe. */
function placeAcross(solved: Solved, bench: Bench, shared: Shared, plan: HalfPlan): Across | undefined {
  const { part, reference } = plan;
  if (plan.role === 'mitre') {
    // The toe line lies in the plane both parts share across the run: the entering part's outer face, the host's end.
    const shown = [plan.mitre?.outer ?? reference, plan.surface].find((side) => axisOf(side) === shared.acrossAxis);
    const toe = shown && solved.at(part.id, shown);
    if (toe === undefined) return undefined;
    return {
      from: { kind: plan.from === 'heel' ? 'heel' : 'toe', side: reference },
      across: shared.c,
      acrossCoordinate: toe,
    };
  }
  const out = outward(reference) === 1;
  const coordinate = out ? shared.referencePlane.sub(shared.c) : shared.referencePlane.add(shared.c);
  const own = plan.role === 'edge' ? solved.at(part.id, reference) : bench.at(part.id, reference);
  if (own === undefined) return undefined;
  const across = out ? own.sub(coordinate) : coordinate.sub(own);
  if (plan.role === 'edge') return { from: { kind: 'face', side: reference }, across, acrossCoordinate: coordinate };
  const at = out ? own.sub(shared.referencePlane) : shared.referencePlane.sub(own);
  return { from: { kind: 'end', side: reference }, across, acrossCoordinate: coordinate, stop: { end: reference, at } };
}

/** A mitre slot's distance from the toe, whichever corner it is measured from; exact only from the toe. */
export function fromToe(half: Half, thickness: Rational): Bounded {
  if (half.from.kind !== 'heel') return boundedOf(half.across);
  const face = mitreFace(thickness, half.mitre?.angle);
  return { value: face.value - half.across.toNumber(), error: face.error + Number.EPSILON * face.value };
}
