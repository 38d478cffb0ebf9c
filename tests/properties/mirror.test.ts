import type { Box, FitResult, FittedPart, Rational, Side } from '@dryfit/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { alike, figures, plain } from '../support/digest.js';
import { fitText } from '../support/read.js';

const swapped = (side: Side): Side => (side === 'left' ? 'right' : side === 'right' ? 'left' : side);

// Common practice, no source: a left-hand and a right-hand cabinet are milled from the same marks, with every piece
// at the other fence.
test('a cabinet written the other way round is its mirror image: same sizes and marks, the other fence', async () => {
  let halves = 0;
  await fc.assert(
    fc.asyncProperty(plans, async (plan) => {
      const one = await fitText(write(plan));
      const other = await fitText(write(plan, { mirrored: true }));
      const wide = one.fit.outside?.x as Rational;
      expect(wide).toBeDefined();
      expect(image(other, wide)).toEqual(written(one));
      halves += one.fit.joints.flatMap((joint) => joint.halves).length;
    }),
    fixedFirst({ fixed: 25, numRuns: 60 }, plans),
  );
  expect(halves).toBeGreaterThan(300);
});

type Seen = {
  readonly side: (side: Side) => Side;
  readonly hand: (hand: 'left' | 'right') => string;
  readonly box: (box: Box) => unknown;
};

const plainBox = ({ lo, hi }: Box): unknown => [lo.x, hi.x, lo.y, hi.y, lo.z, hi.z].map(String);

/** What the cabinet says. */
const written = (result: FitResult): unknown =>
  told(result, { side: (side) => side, hand: (hand) => hand, box: plainBox });

/** What it says seen in a mirror that stands upright to its width. */
function image(result: FitResult, wide: Rational): unknown {
  const box = ({ lo, hi }: Box): unknown =>
    plainBox({ lo: { ...lo, x: wide.sub(hi.x) }, hi: { ...hi, x: wide.sub(lo.x) } });
  return told(result, { side: swapped, hand: (hand) => swapped(hand), box });
}

function told({ fit, findings }: FitResult, seen: Seen): unknown {
  const half = (one: (typeof fit.joints)[number]['halves'][number]) => ({
    ...one,
    surface: seen.side(one.surface),
    datum: seen.side(one.datum),
    from: { ...one.from, side: seen.side(one.from.side) },
    mitre: one.mitre && { ...one.mitre, outer: seen.side(one.mitre.outer) },
    stop: one.stop && { end: seen.side(one.stop.end), at: one.stop.at.toString() },
    hand: seen.hand(one.hand),
    slots: one.slots.map(({ centre: _, ...slot }) => slot),
  });
  const part = (one: FittedPart) => ({
    id: one.id,
    box: one.box && seen.box(one.box),
    cut: one.cutSize,
    alike: alike(fit.parts, one),
    recesses: one.cuts.flatMap((cut) => ('box' in cut ? [JSON.stringify([cut.kind, seen.box(cut.box)])] : [])).sort(),
  });
  return JSON.parse(
    JSON.stringify({
      parts: fit.parts.map(part),
      joints: fit.joints
        .map((joint) => ({ id: joint.id, trouble: joint.trouble, lines: joint.lines, halves: joint.halves.map(half) }))
        .sort((a, b) => (a.id < b.id ? -1 : 1)),
      // Joints milled alike share a finding, which names the one that stands left; its figures are the same.
      findings: findings
        .map(({ code, severity, message }) => JSON.stringify(plain([code, severity, figures(message)])))
        .sort(),
    }),
  );
}
