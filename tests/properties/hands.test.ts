import {
  AXES,
  axisOf,
  type Box,
  type FitResult,
  type FittedJoint,
  type Half,
  outward,
  type Side,
} from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { halfIn } from '../support/frame.js';
import { fitText } from '../support/read.js';
import { ALL_TURNS, eighth, followedBy, type Turn, turned } from '../support/turning.js';
import { distance, OUT, plus, unit, type Vector } from '../support/vectors.js';

// The bench: the operator looks along +y at the slotted side of the piece, x runs to the right, z up.
const TOWARD_OPERATOR: Vector = [0, -1, 0];

const near = (a: Vector, b: Vector): boolean => distance(a, b) < 1e-6;

/** Middle of a side of a box. */
function middle(box: Box, side?: Side): Vector {
  return AXES.map((axis) => {
    const [lo, hi] = [box.lo[axis].toNumber(), box.hi[axis].toNumber()];
    if (side === undefined || axisOf(side) !== axis) return (lo + hi) / 2;
    return outward(side) === 1 ? hi : lo;
  }) as unknown as Vector;
}

/** Which way the slotted side looks, and the way from the slots to the reference, in the cabinet. */
function directions(joint: FittedJoint, half: Half): { readonly surface: Vector; readonly toReference: Vector } {
  if (half.role !== 'mitre') return { surface: OUT[half.surface], toReference: OUT[half.from.side] };
  const entering = half.part === joint.entering;
  const end = OUT[entering ? joint.enteringSide : joint.hostSide];
  const outer = OUT[entering ? joint.hostSide : joint.enteringSide];
  const toToe = unit(plus(end, outer));
  const surface = unit(plus(end, outer, -1));
  return { surface, toReference: half.from.kind === 'toe' ? toToe : [-toToe[0], -toToe[1], -toToe[2]] };
}

/**
 * Puts the piece on the bench by turning it as a body, and looks at which end of the bench its datum side comes to
 * lie. A mitred end is first turned by half a right angle so that its face stands square.
 */
function handAtBench(result: FitResult, joint: FittedJoint, half: Half): 'left' | 'right' {
  const box = result.fit.parts.find((part) => part.id === half.part)?.box as Box;
  const { surface, toReference } = directions(joint, half);
  const { pose } = result.spec.shop;
  const up: Vector = [0, 0, (half.role === 'face' ? pose.face : pose.edge) === 'up' ? 1 : -1];
  const run = AXES.indexOf(axisOf(half.datum)) as 0 | 1 | 2;
  const turns: readonly Turn[] =
    half.role === 'mitre'
      ? ([1, -1] as const).flatMap((way) => ALL_TURNS.map((turn) => followedBy(eighth(run, way), turn)))
      : ALL_TURNS;
  const ways = turns.filter(
    (turn) => near(turned(turn, surface), TOWARD_OPERATOR) && near(turned(turn, toReference), up),
  );
  expect(ways.length).toBeGreaterThan(0);
  const centre = middle(box);
  const chalk = plus(middle(box, half.datum), centre, -1);
  const lies = ways.map((turn) => (turned(turn, chalk)[0] > 0 ? 'right' : 'left'));
  expect(new Set(lies).size).toBe(1);
  return lies[0] as 'left' | 'right';
}

test('a box can be put down square in twenty-four ways', () => {
  expect(ALL_TURNS).toHaveLength(24);
});

test('the fence is the one the datum edge comes to when the piece is turned onto the bench', async () => {
  const seen = new Set<string>();
  await fc.assert(
    fc.asyncProperty(plans, async (plan) => {
      const result = await fitText(write(plan));
      const { pose } = result.spec.shop;
      for (const joint of result.fit.joints) {
        for (const half of joint.halves) {
          expect(half.hand, `${joint.id}, ${half.part}`).toBe(handAtBench(result, joint, half));
          seen.add(`${half.role} ${half.hand} ${half.role === 'face' ? pose.face : pose.edge}`);
        }
      }
    }),
    fixedFirst({ fixed: 30, numRuns: 60 }, plans),
  );
  // Every role at either fence, either way up, has come by.
  expect(seen.size).toBe(12);
});

test('halves that share a reference plane use one hand, mirrored halves opposite hands, or the pose turns that round', async () => {
  await fc.assert(
    fc.asyncProperty(plans, async (plan) => {
      const result = await fitText(write(plan));
      const { pose } = result.spec.shop;
      for (const joint of result.fit.joints) {
        const [a, b] = joint.halves;
        if (!a || !b) continue;
        const alike = joint.meeting === 'edge to face' ? pose.edge !== pose.face : false;
        expect(a.hand === b.hand, joint.id).toBe(alike);
      }
    }),
    { numRuns: 60 },
  );
});

describe('absolute cases', () => {
  // Common practice, no source: stand the left side up with its inner face toward you, and its rear edge is at your
  // right hand.
  const text = (face: 'up' | 'down', datum = 'rear') => `units mm
material board { thickness 18 }
machine joiner { cutter 100  kerf 4  base to centre 9 }
connector plate : biscuit { along 53  across 19  thickness 4  plunge 10  by joiner }
pattern two { lines 80, 240 }
pose { edge slots reference down  face slots reference ${face} }
cabinet Case {
  part lh, rh : upright of board
  part top, base, shelf : level of board
  width 600 over lh and rh
  height 700 of lh
  depth 320 of lh
  connect plate by two
  butt top between lh and rh { flush top, rear, front  datum ${datum} }
  butt base between lh and rh { flush bottom, rear, front  datum ${datum} }
  butt shelf between lh and rh { flush rear, front  bottom 300 above base.bottom  datum ${datum} }
}
`;
  const other = { left: 'right', right: 'left' } as const;
  const cases = [
    ['lh', 'top', 'right'],
    ['lh', 'base', 'left'],
    ['lh', 'shelf', 'left'],
    ['rh', 'top', 'left'],
    ['rh', 'base', 'right'],
    ['rh', 'shelf', 'right'],
  ] as const;

  test.each(cases)('%s against %s: the %s fence, reference end up, rear datum', async (side, entering, hand) => {
    const { fit } = await fitText(text('up'));
    const joint = fit.joints.find(({ id }) => id === `${entering} / ${side}`);
    expect(halfIn(joint?.halves ?? [], side).hand).toBe(hand);
    expect(halfIn(joint?.halves ?? [], entering).hand).toBe(hand);
  });

  test.each(cases)(
    '%s against %s: not the %s fence once the side stands on its reference end',
    async (side, entering, hand) => {
      const { fit } = await fitText(text('down'));
      const joint = fit.joints.find(({ id }) => id === `${entering} / ${side}`);
      expect(halfIn(joint?.halves ?? [], side).hand).toBe(other[hand]);
      expect(halfIn(joint?.halves ?? [], entering).hand).toBe(hand);
    },
  );

  test.each(cases)('%s against %s: not the %s fence from the front', async (side, entering, hand) => {
    const { fit } = await fitText(text('up', 'front'));
    const joint = fit.joints.find(({ id }) => id === `${entering} / ${side}`);
    expect(halfIn(joint?.halves ?? [], side).hand).toBe(other[hand]);
    expect(halfIn(joint?.halves ?? [], entering).hand).toBe(other[hand]);
  });
});
