import { type FitResult, type FittedJoint, type FittedPart, type Half, Rational, type Slot } from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { halfIn } from '../support/frame.js';
import { fitText } from '../support/read.js';
import { cross, distance, dot, OUT, plus, type Vector } from '../support/vectors.js';
import { type Corner, written } from './corner.js';
import { out, triple } from './vectors.js';

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
const corners: fc.Arbitrary<Corner> = fc.record({
  x: fc.constantFrom('left' as const, 'right' as const),
  y: fc.constantFrom('front' as const, 'rear' as const),
  wide: tenths(520, 800),
  deep: tenths(520, 800),
  legX: tenths(180, 330),
  legY: tenths(180, 330),
  inner: fc.boolean(),
  pose: fc.constantFrom('up' as const, 'down' as const),
});

const partOf = ({ fit }: FitResult, id: string): FittedPart => {
  const part = fit.parts.find((one) => one.id === id);
  if (!part?.box) throw new Error(`${id} is not fixed`);
  return part;
};
const jointOf = ({ fit }: FitResult, id: string): FittedJoint => {
  const joint = fit.joints.find((one) => one.id === id);
  if (!joint) throw new Error(`there is no joint ${id}`);
  return joint;
};

/** What would be wrong to say of such a unit. */
const WRONG = ['check-failed', 'parts-overlap', 'slots-collide', 'no-contact', 'part-not-fixed', 'turned-otherwise'];

/** The two ends of the cant in plan, left one first, in plain floating numbers. */
function ends({ x, y, wide, deep, legX, legY }: Corner): readonly [Vector, Vector] {
  const [w, d, a, b] = [wide, deep, legX, legY].map(Number) as [number, number, number, number];
  const cornerX = x === 'right' ? w : 0;
  const cornerY = y === 'rear' ? d : 0;
  const onY: Vector = [x === 'right' ? w - a : a, cornerY, 0];
  const onX: Vector = [cornerX, y === 'rear' ? d - b : b, 0];
  return onY[0] < onX[0] ? [onY, onX] : [onX, onY];
}

/** Into the cabinet, square to the cant. */
function inward(corner: Corner): Vector {
  const [p, q] = ends(corner);
  const along = plus(q, p, -1);
  const square: Vector = [-along[1], along[0], 0];
  const length = Math.hypot(...square);
  const sign = corner.y === 'front' ? 1 : -1;
  return [(sign * square[0]) / length, (sign * square[1]) / length, 0];
}

test('a turned part stands between the ends of its cant, as thick as its sheet, behind the cant', async () => {
  await fc.assert(
    fc.asyncProperty(corners, async (corner) => {
      const result = await fitText(written(corner));
      expect(result.findings.filter(({ code }) => WRONG.includes(code)).map(({ message }) => message)).toEqual([]);
      const { box, turn, width, extent } = partOf(result, 'face');
      const [p, q] = ends(corner);
      const length = distance(p, q);
      expect(Math.abs((width?.value ?? 0) - length)).toBeLessThanOrEqual((width?.error ?? 0) + 1e-9);
      expect(Math.abs((extent.x?.toNumber() ?? 0) - length)).toBeLessThanOrEqual(0.0005 + 1e-9);
      if (!box || !turn) throw new Error('not turned');
      const outer = corner.y === 'front' ? box.lo.y : box.hi.y;
      const inner = corner.y === 'front' ? box.hi.y : box.lo.y;
      expect(distance(out(turn, [0, outer.toNumber(), 0]), p)).toBeLessThan(1e-6);
      expect(distance(out(turn, [length, outer.toNumber(), 0]), q)).toBeLessThan(1e-6);
      const heel = plus(p, inward(corner), 17.7);
      expect(distance(out(turn, [0, inner.toNumber(), 0]), heel)).toBeLessThan(1e-6);
    }),
    { numRuns: 40 },
  );
});

test('the plan closes: interior angles of its five corners add up to 540°, and toes meet in points that are exact', async () => {
  await fc.assert(
    fc.asyncProperty(corners, async (corner) => {
      const result = await fitText(written(corner));
      const bevels = (id: string) => partOf(result, id).cuts.flatMap((cut) => (cut.kind === 'bevel' ? [cut] : []));
      const face = bevels('face');
      expect(face).toHaveLength(2);
      const interior = face.reduce((sum, { angle }) => sum + 180 - 2 * angle, 3 * 90);
      expect(interior).toBeCloseTo(540, 9);
      for (const id of ['stub', 'end']) {
        const [own] = bevels(id);
        const mate = face.find(({ joint }) => joint === own?.joint);
        expect(own?.angle).toBe(mate?.angle);
      }
      // The line of the cant against the side it leaves, by another road: the sine of the angle from the cross product.
      const [p, q] = ends(corner);
      const along = plus(q, p, -1);
      const onStub = Math.asin(Math.abs(along[1]) / Math.hypot(...along));
      const stubBevel = bevels('stub')[0]?.angle ?? 0;
      expect((stubBevel * Math.PI) / 90).toBeCloseTo(onStub, 9);
      const stub = partOf(result, 'stub').box;
      const end = partOf(result, 'end').box;
      const [onY, onX] = corner.x === 'right' ? [p, q] : [q, p];
      const point = (n: number) => Rational.of(Math.round(n * 10), 10);
      expect((corner.x === 'right' ? stub?.hi.x : stub?.lo.x)?.equals(point(onY[0]))).toBe(true);
      expect((corner.y === 'front' ? end?.lo.y : end?.hi.y)?.equals(point(onX[1]))).toBe(true);
    }),
    { numRuns: 40 },
  );
});

/** Where a slot's mouth lies in the cabinet and which way its cutter goes in, worked out from the part's own sides. */
function slotAt(result: FitResult, joint: FittedJoint, half: Half, slot: Slot) {
  const part = partOf(result, half.part);
  const frame = half.turn ?? part.turn;
  if (!half.mitre) return { at: out(frame, triple(slot.centre)), way: out(frame, OUT[half.surface], true) };
  const thickness = 17.7;
  const beta = (half.mitre.angle * Math.PI) / 180;
  const end = OUT[half.surface];
  const outer = OUT[half.mitre.outer];
  const width = thickness / Math.cos(beta);
  const measured = slot.fromReference.toNumber();
  const fromToe = half.from.kind === 'toe' ? measured : width - measured;
  const down = plus([end[0] * -Math.sin(beta), end[1] * -Math.sin(beta), 0], outer, -Math.cos(beta));
  const way = plus([end[0] * Math.cos(beta), end[1] * Math.cos(beta), 0], outer, -Math.sin(beta));
  expect(joint.mitre?.angle).toBe(half.mitre.angle);
  return { at: out(frame, plus(triple(slot.centre), down, fromToe)), way: out(frame, way, true) };
}

test('both halves of every joint of a turned part lie at one place, and their cutters go in opposite ways', async () => {
  await fc.assert(
    fc.asyncProperty(corners, async (corner) => {
      const result = await fitText(written(corner));
      const joints = result.fit.joints.filter(({ entering }) => entering === 'face');
      expect(joints.map(({ host }) => host).sort()).toEqual(['base', 'end', 'stub', 'top']);
      for (const joint of joints) {
        const [one, two] = joint.halves;
        if (!one || !two) throw new Error(`${joint.id} has no halves: ${joint.trouble.join()}`);
        expect(one.slots.length).toBeGreaterThan(0);
        one.slots.forEach((slot, i) => {
          const a = slotAt(result, joint, one, slot);
          const b = slotAt(result, joint, two, two.slots[i] as Slot);
          // The right end of the part is where its width says, and that is written to a thousandth.
          expect(distance(a.at, b.at), `${joint.id} slot ${i + 1}`).toBeLessThan(0.0006);
          expect(distance(plus(a.way, b.way), [0, 0, 0])).toBeLessThan(1e-9);
        });
      }
    }),
    { numRuns: 40 },
  );
});

test('slots in a level part lie along its cant, as a rule laid from the end of the cant measures them', async () => {
  await fc.assert(
    fc.asyncProperty(corners, async (corner) => {
      const result = await fitText(written(corner));
      const [p, q] = ends(corner);
      const length = distance(p, q);
      const unit = plus([0, 0, 0], plus(q, p, -1), 1 / length);
      for (const [level, z] of [
        ['base', 17.7],
        ['top', 482.3],
      ] as const) {
        const half = halfIn(jointOf(result, `face / ${level}`).halves, level);
        expect(half.across.toNumber()).toBe(9.5);
        for (const slot of half.slots) {
          const ruled = plus(plus(plus(p, unit, slot.fromDatum.toNumber()), inward(corner), 9.5), [0, 0, z]);
          expect(distance(out(half.turn, triple(slot.centre)), ruled)).toBeLessThan(1e-6);
        }
      }
    }),
    { numRuns: 40 },
  );
});

test('hands are those of the directions as they run in the cabinet', async () => {
  const seen = new Set<string>();
  await fc.assert(
    fc.asyncProperty(corners, async (corner) => {
      const result = await fitText(written(corner));
      const { pose } = result.spec.shop;
      for (const joint of result.fit.joints.filter(({ entering }) => entering === 'face')) {
        for (const half of joint.halves) {
          const frame = half.turn ?? partOf(result, half.part).turn;
          const [surface, datum] = [half.surface, half.datum].map((side) => out(frame, OUT[side], true)) as [
            Vector,
            Vector,
          ];
          const beta = ((half.mitre?.angle ?? 0) * Math.PI) / 180;
          const outer = half.mitre && out(frame, OUT[half.mitre.outer], true);
          const slotted = outer ? plus(plus([0, 0, 0], surface, Math.cos(beta)), outer, -Math.sin(beta)) : surface;
          const toToe = outer && plus(plus([0, 0, 0], surface, Math.sin(beta)), outer, Math.cos(beta));
          const reference = toToe
            ? plus([0, 0, 0], toToe, half.from.kind === 'toe' ? 1 : -1)
            : out(frame, OUT[half.from.side], true);
          const way = half.role === 'face' ? pose.face : pose.edge;
          const up = plus([0, 0, 0], reference, way === 'up' ? 1 : -1);
          const right = dot(cross(plus([0, 0, 0], slotted, -1), up), datum) > 0;
          expect(half.hand, `${joint.id}, ${half.part}`).toBe(right ? 'right' : 'left');
          seen.add(`${half.role} ${half.hand}`);
        }
      }
    }),
    fixedFirst({ fixed: 15, numRuns: 40 }, corners),
  );
  expect(seen.size).toBe(6);
});

describe('absolute cases', () => {
  const plain: Corner = { x: 'right', y: 'front', wide: 700, deep: 700, legX: 300, legY: 300 };

  // Done with a piece of card, common practice, no source: hold the face with its bottom end toward you and its outer
  // side down, and its left edge is at your right hand; with its top end toward you it is at your left.
  test('the face is held as a panel between two others is, whichever way it looks', async () => {
    for (const x of ['left', 'right'] as const) {
      const result = await fitText(written({ ...plain, x }));
      expect(halfIn(jointOf(result, 'face / base').halves, 'face').hand).toBe('right');
      expect(halfIn(jointOf(result, 'face / top').halves, 'face').hand).toBe('left');
    }
  });

  test('legs of 300 and 400 make a width of 500, exactly', async () => {
    const result = await fitText(written({ ...plain, legX: 300, legY: 400 }));
    const face = partOf(result, 'face');
    expect(face.extent.x?.equals(Rational.of(500))).toBe(true);
    expect(face.width).toEqual({ value: 500, error: 0 });
    expect(face.cutSize?.width.equals(Rational.of(500))).toBe(true);
  });

  test('at 45° both mitres are at 22.5°, and legs of 100 and 173.2 turn by nearly 60° and 30°', async () => {
    const angles = async (corner: Corner) =>
      partOf(await fitText(written(corner)), 'face').cuts.flatMap((cut) => (cut.kind === 'bevel' ? [cut.angle] : []));
    for (const angle of await angles(plain)) expect(angle).toBeCloseTo(22.5, 12);
    const [left, right] = await angles({ ...plain, legX: 200, legY: 346.41 });
    expect(left).toBeCloseTo(30, 4);
    expect(right).toBeCloseTo(15, 4);
  });

  test('outside sizes are exactly those of the level parts, though the width of the face is a root', async () => {
    const legs = fc.integer({ min: 180, max: 330 });
    const numbers = fc.record({
      legX: legs,
      legY: legs,
      x: fc.constantFrom('left', 'right'),
      y: fc.constantFrom('front', 'rear'),
    });
    await fc.assert(
      fc.asyncProperty(numbers, async (corner) => {
        const { fit } = await fitText(written({ ...corner, wide: 700, deep: '620.3' }));
        expect([fit.outside?.x, fit.outside?.y].map(String)).toEqual(['700', '6203/10']);
      }),
      { numRuns: 15, examples: [[{ legX: 280, legY: 250, x: 'right', y: 'front' }]] },
    );
  });

  test('outside sizes do not grow by a part that stands behind its cant, and nothing is found', async () => {
    const result = await fitText(written(plain));
    const { outside } = result.fit;
    expect([outside?.x, outside?.y, outside?.z].map((size) => size?.toNumber())).toEqual([700, 700, 500]);
    expect(result.findings.map(({ code }) => code)).toEqual([]);
  });
});

describe('a part laid on its cant', () => {
  const text = (more = '', face = 'butt face to base.cant { reference bottom  connect plate by two }') => `units mm
material board { thickness 18 }
machine joiner { cutter 100  kerf 4  base to centre 9.5 }
connector plate : biscuit { along 53  across 19  thickness 4  plunge 9.9  by joiner }
pattern two { first 60  last 60 }
cabinet Sill {
  part base : level of board
  part face : facing of board on base.cant
  width 600 of base
  depth 500 of base
  cant base at front right { width 300  depth 400 }
  height 100 of face
  face.bottom flush with base
  ${face}
  ${more}
}
`;

  test('lies outside, and meets the cant with its inner face', async () => {
    const result = await fitText(text());
    const { box, turn } = partOf(result, 'face');
    // The cant looks along (400, −300)/500; from its left end (300, 0) the outer corner lies 18 that way.
    expect(distance(out(turn, [0, box?.lo.y.toNumber() ?? 0, 0]), [300 + 18 * 0.8, -18 * 0.6, 0])).toBeLessThan(1e-9);
    const joint = jointOf(result, 'face / base');
    const [face, base] = [halfIn(joint.halves, 'face'), halfIn(joint.halves, 'base')];
    expect([face.role, base.role]).toEqual(['face', 'edge']);
    expect(face.slots.map(({ fromDatum }) => fromDatum.toNumber())).toEqual([60, 440]);
    face.slots.forEach((slot, i) => {
      const a = slotAt(result, joint, face, slot);
      const b = slotAt(result, joint, base, base.slots[i] as Slot);
      expect(distance(a.at, b.at)).toBeLessThan(1e-9);
      const unit: Vector = [0.6, 0.8, 0];
      expect(distance(a.at, plus([300, 0, 9.5], unit, slot.fromDatum.toNumber()))).toBeLessThan(1e-9);
    });
    // It reaches out beyond the board: 18 · 0.6 further to the front, 18 · 0.8 further to the right.
    expect(result.fit.outside?.x.toNumber()).toBeCloseTo(614.4, 6);
    expect(result.fit.outside?.y.toNumber()).toBeCloseTo(510.8, 6);
  });

  test('may not be mitred there: its toes would meet beyond the cant', async () => {
    const result = await fitText(
      text(
        'part end : upright of board\n  height 100 of end\n  end.bottom flush with base\n  end.rear flush with base\n  mitre face to end.right',
      ),
    );
    expect(result.findings.map(({ code }) => code)).toContain('turned-otherwise');
  });
});
