import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Rational } from '../number/rational.js';
import { fit } from '../pipeline.js';
import { axisOf, type Side } from '../spec/sides.js';
import { fixedFirst } from '../testing/fixed-first.fixture.js';
import { flush, reference } from '../testing/joint-items.js';
import { shop } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { mm } from '../testing/written.js';
import { baseFromStep, baseFromWalls, stepOf } from './base.js';
import { depthFromDepth, depthFromGap } from './depth.js';
import { baseMoves, withBase } from './moves.js';

/*
 * A bench with a machine that is off by what nobody knows. A piece of scrap is a block with x into its edge, y along it and z
 * through its thickness, its reference face at z = 0. The machine lies on that face and mills at its base's height; a piece
 * is turned over by half a turn about x, and two pieces are brought together so that their slots are one.
 */

type Vector = readonly [Rational, Rational, Rational];
const ZERO = Rational.ZERO;

interface Piece {
  /** Middles of the two faces. */
  readonly reference: Vector;
  readonly plain: Vector;
  /** Middle of the slot's mouth, and of its bottom. */
  readonly mouth: Vector;
  readonly bottom: Vector;
}

/** What the machine really does. */
interface Machine {
  readonly base: Rational;
  readonly depth: Rational;
}

const mill = (thickness: Rational, { base, depth }: Machine): Piece => ({
  reference: [ZERO, ZERO, ZERO],
  plain: [ZERO, ZERO, thickness],
  mouth: [ZERO, ZERO, base],
  bottom: [depth, ZERO, base],
});

/** Every point of a piece moved. */
const moved = ({ reference, plain, mouth, bottom }: Piece, move: (at: Vector) => Vector): Piece => ({
  reference: move(reference),
  plain: move(plain),
  mouth: move(mouth),
  bottom: move(bottom),
});

/** Half a turn about the way into the edge: the other face comes up. */
const turnedOver = (piece: Piece): Piece => moved(piece, ([x, y, z]) => [x, y.neg(), z.neg()]);
/** Half a turn about the upright: its edge looks at the other piece. */
const facing = (piece: Piece): Piece => moved(piece, ([x, y, z]) => [x.neg(), y.neg(), z]);
/** Set beside a piece so that the slots lie in one plane. */
function beside(piece: Piece, fixed: Piece): Piece {
  const up = fixed.mouth[2].sub(piece.mouth[2]);
  return moved(piece, ([x, y, z]) => [x, y, z.add(up)]);
}

const thousandths = (min: number, max: number) => fc.integer({ min, max }).map((n) => Rational.of(n, 1000));
const share = fc.integer({ min: -100, max: 100 }).map((n) => Rational.of(n, 100));
const sheet = thousandths(12_000, 30_000);
const base = thousandths(3_000, 12_000);

describe('the base of a machine', () => {
  test('is found exactly from a joint with one half turned over, on whichever side the step is measured', () => {
    fc.assert(
      fc.property(base, sheet, sheet, (hidden, first, second) => {
        const machine = { base: hidden, depth: Rational.of(12) };
        const one = mill(first, machine);
        const other = beside(turnedOver(facing(mill(second, machine))), one);
        // Up here lies the first one's plain face and the other's reference face; down there it is the other way round.
        const above = { thickness: first, step: other.reference[2].sub(one.plain[2]) };
        const below = { thickness: second, step: other.plain[2].sub(one.reference[2]) };
        for (const joint of [above, below]) expect(String(baseFromStep(joint, ZERO).value)).toBe(String(hidden));
        expect(String(stepOf(hidden, first))).toBe(String(above.step));
      }),
    );
  });

  test('drops out of a joint whose reference faces look the same way', () => {
    const end = fc.constantFrom<Side>('top', 'bottom');
    fc.assert(
      fc.property(thousandths(8_800, 10_200), sheet, sheet, end, (hidden, first, second, side) => {
        fc.pre(!hidden.equals(mm('9.5')));
        const spec = sides(shop())
          .part('shelf', 'level', 'birch18')
          .of('depth', 560, 'shelf')
          .connect('biscuit20', 'deep5')
          .joint('butt', 'shelf', 'between lh and rh', flush(side, 'front'), reference(side))
          .build();
        const { joints } = fit(withBase(spec, 'joiner', hidden)).fit;
        expect(joints).toHaveLength(2);
        for (const { halves } of joints) {
          expect(halves.map(({ from }) => from.side)).toEqual([side, side]);
          // Milled at what the halves are told to be from their references, and brought together.
          const [one, other] = [first, second].map((thickness, i) =>
            mill(thickness, { base: halves[i]?.across ?? ZERO, depth: Rational.of(12) }),
          ) as [Piece, Piece];
          expect(String(one.mouth[2])).toBe(String(hidden));
          expect(beside(facing(other), one).reference[2].equals(one.reference[2])).toBe(true);
        }
        expect(baseMoves(spec, 'joiner', hidden).halves).toHaveLength(4);
      }),
      { numRuns: 30 },
    );
  });

  test('is no further off than is told, however the two figures are off', () => {
    fc.assert(
      fc.property(base, sheet, thousandths(0, 100), share, share, (hidden, thickness, within, a, b) => {
        const measured = {
          thickness: thickness.add(within.mul(a)),
          step: stepOf(hidden, thickness).add(within.mul(b)),
        };
        const found = baseFromStep(measured, within);
        expect(found.value.sub(hidden).abs().le(found.within)).toBe(true);
        // Both off the same way is the worst there is.
        const worst = baseFromStep(
          { thickness: thickness.add(within), step: stepOf(hidden, thickness).add(within) },
          within,
        );
        expect(worst.value.sub(hidden).equals(worst.within)).toBe(true);
      }),
    );
  });

  test('is half-way between the walls of a slot, which is as wide as they are apart', () => {
    fc.assert(
      fc.property(base, thousandths(2_000, 8_000), thousandths(0, 100), share, share, (hidden, kerf, within, a, b) => {
        const half = kerf.div(Rational.TWO);
        const walls = {
          nearer: hidden.sub(half).add(within.mul(a)),
          farther: hidden.add(half).add(within.mul(b)),
        };
        const found = baseFromWalls(walls, within);
        expect(found.base.value.sub(hidden).abs().le(found.base.within)).toBe(true);
        expect(found.kerf.value.sub(kerf).abs().le(found.kerf.within)).toBe(true);
        if (within.isZero()) expect(String(found.base.value)).toBe(String(hidden));
      }),
    );
  });
});

describe('the depth of a machine', () => {
  const biscuit = shop().connectors.get('biscuit20');
  const tenon = shop().connectors.get('tenon8');
  if (!biscuit || !tenon) throw new Error('the shop has lost its connectors');

  test('is found exactly from a joint that the connector keeps open; one that closes tells nothing', () => {
    let [open, closed] = [0, 0];
    const [connectors, offs] = [fc.constantFrom(biscuit, tenon), thousandths(-2_500, 2_500)];
    fc.assert(
      fc.property(connectors, offs, (connector, hidden) => {
        // Edge to edge: both slots as deep as an edge's.
        const piece = mill(Rational.of(18), { base: mm('9.5'), depth: connector.plunge.edge.add(hidden) });
        // Pressed home, the connector stands on both bottoms, or the edges touch.
        const room = piece.bottom[0].sub(piece.mouth[0]).mul(Rational.TWO);
        const gap = Rational.max(ZERO, connector.across.sub(room));
        const found = depthFromGap(connector, connector.across, gap, ZERO);
        if (gap.isZero()) {
          expect(found).toBeUndefined();
          closed++;
          return;
        }
        open++;
        expect(String(found?.off.value)).toBe(String(hidden));
        expect(String(found?.plunge.face)).toBe(String(connector.plunge.face.add(hidden)));
        // As deep in the face as in the edge off: what edge to face then lacks is what it stays open.
        const lacks = connector.across
          .sub(connector.plunge.face)
          .sub(connector.plunge.edge)
          .sub(hidden.mul(Rational.TWO));
        expect(String(found?.short)).toBe(String(lacks));
      }),
      fixedFirst({ fixed: 200, numRuns: 300 }, connectors, offs),
    );
    expect(Math.min(open, closed)).toBeGreaterThan(20);
  });

  test('is what is measured of a slot, less what was set', () => {
    const found = depthFromDepth(biscuit, mm('11.9'), mm('0.05'));
    expect([found.off.value, found.off.within, found.short].map(String)).toEqual(['-2/5', '1/20', '-4/5']);
  });
});

describe('a corrected base', () => {
  const cabinet = () =>
    sides(shop())
      .part('top, shelf', 'level', 'birch18')
      .of('depth', 560, 'shelf, top')
      .connect('biscuit20', 'deep5')
      .joint('butt', 'top', 'between lh and rh', flush('top', 'front'))
      .build();

  test('moves both halves of a joint together, so that they still meet', () => {
    fc.assert(
      fc.property(thousandths(8_800, 10_200), (to) => {
        fc.pre(!to.equals(mm('9.5')));
        const spec = cabinet();
        const { halves } = baseMoves(spec, 'joiner', to);
        expect(halves).toHaveLength(4);
        for (const { half, to: now } of halves) expect(String(now.sub(half.across))).toBe(String(to.sub(mm('9.5'))));
        const joints = fit(withBase(spec, 'joiner', to)).fit.joints.map(({ halves }) => halves);
        expect(joints.map((both) => both.map(({ slots }) => slots.length))).toEqual([
          [5, 5],
          [5, 5],
        ]);
        for (const [a, b] of joints) {
          const across = axisOf(a?.from.side ?? 'top');
          expect(a?.slots.map(({ centre }) => String(centre[across]))).toEqual(
            b?.slots.map(({ centre }) => String(centre[across])),
          );
        }
      }),
      { numRuns: 30 },
    );
  });

  test('tells what is found with it that was not, and the other way round', () => {
    const thin = baseMoves(cabinet(), 'joiner', mm('4.5'));
    expect(thin.found.map(({ code }) => code)).toContain('thin-wall');
    expect(thin.cured).toEqual([]);
    const back = baseMoves(withBase(cabinet(), 'joiner', mm('4.5')), 'joiner', mm('9.5'));
    expect(back.cured.map(({ code }) => code)).toContain('thin-wall');
    expect(baseMoves(cabinet(), 'mortiser', mm('9')).halves).toEqual([]);
  });
});
