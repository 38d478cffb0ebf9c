import {
  axisOf,
  type FitResult,
  type FittedJoint,
  type FittedPart,
  type Half,
  outward,
  type Slot,
} from '@dryfit/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { bandAt, planeOf } from '../support/frame.js';
import { fitText } from '../support/read.js';

// Common practice, no source: a joint goes together when the slots milled into its two parts, each measured from
// edges and faces of its own part, lie at one place once the parts stand in the cabinet.
test('what is milled into the two parts of a joint lies at one place in the cabinet', async () => {
  let compared = 0;
  await fc.assert(
    fc.asyncProperty(plans, async (plan) => {
      const result = await fitText(write(plan));
      for (const joint of result.fit.joints) compared += compareHalves(result, joint);
    }),
    fixedFirst({ fixed: 25, numRuns: 60 }, plans),
  );
  expect(compared).toBeGreaterThan(300);
});

function compareHalves(result: FitResult, joint: FittedJoint): number {
  const [one, other] = joint.halves;
  if (!one || !other) return 0;
  expect(one.slots.length).toBe(other.slots.length);
  one.slots.forEach((slot, i) => {
    const twin = other.slots[i] as Slot;
    const a = mouth(result, joint, one, slot);
    const b = mouth(result, joint, other, twin);
    for (const axis of ['x', 'y', 'z'] as const) {
      expect(a[axis], `${slot.id} and ${twin.id} along ${axis}`).toBeCloseTo(b[axis], 9);
    }
    expect(twin.number).toBe(slot.number);
  });
  return one.slots.length;
}

/**
 * The middle of a slot's mouth, from the sides of its own part alone: so far from the datum edge, so far from the
 * reference, in the slotted side. Bands that are glued on later are not there to measure from.
 */
function mouth(result: FitResult, joint: FittedJoint, half: Half, slot: Slot): Record<'x' | 'y' | 'z', number> {
  const part = result.fit.parts.find(({ id }) => id === half.part) as FittedPart;
  const box = part.box;
  if (!box) throw new Error(`${part.id} has slots but no box`);
  const atBench = (side: Half['datum']): number => {
    const band = result.fit.milled === 'before banding' ? (bandAt(part, side)?.toNumber() ?? 0) : 0;
    return planeOf(box, side).toNumber() - outward(side) * band;
  };
  const at = { x: Number.NaN, y: Number.NaN, z: Number.NaN };
  at[axisOf(half.datum)] = atBench(half.datum) - outward(half.datum) * slot.fromDatum.toNumber();
  if (half.role !== 'mitre') {
    at[axisOf(half.surface)] = planeOf(box, half.surface).toNumber();
    const from = half.role === 'edge' ? planeOf(box, half.from.side).toNumber() : atBench(half.from.side);
    at[axisOf(half.from.side)] = from - outward(half.from.side) * slot.fromReference.toNumber();
    return at;
  }
  // A mitre face runs at 45° from its toe, where the end meets the outer face, to its heel.
  const isEntering = half.part === joint.entering;
  const end = isEntering ? joint.enteringSide : joint.hostSide;
  const outer = isEntering ? joint.hostSide : joint.enteringSide;
  const thickness = box.hi[axisOf(outer)].sub(box.lo[axisOf(outer)]).toNumber();
  const measured = slot.fromReference.toNumber();
  const fromToe = half.from.kind === 'toe' ? measured : thickness * Math.SQRT2 - measured;
  for (const side of [end, outer])
    at[axisOf(side)] = planeOf(box, side).toNumber() - (outward(side) * fromToe) / Math.SQRT2;
  return at;
}
