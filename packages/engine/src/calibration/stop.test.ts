import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Rational } from '../number/rational.js';
import { fit } from '../pipeline.js';
import { fact, flush, at as placed, reference } from '../testing/joint-items.js';
import { shop } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { mm } from '../testing/written.js';
import { agree, stopFromJoint, stopFromWalls } from './stop.js';
import { stopMoves } from './stop-moves.js';

/*
 * A bench whose stop and machine are off by what nobody knows. The lying piece has its end at 0 and its slot in the face; the
 * standing piece is a board of some thickness with a slot in its edge, measured from its reference face. Put together, the
 * middles of the two slots are one.
 */

const ZERO = Rational.ZERO;
const thousandths = (min: number, max: number) => fc.integer({ min, max }).map((n) => Rational.of(n, 1000));
const share = fc.integer({ min: -100, max: 100 }).map((n) => Rational.of(n, 100));

interface Bench {
  readonly stopOff: Rational;
  readonly base: Rational;
  readonly kerf: Rational;
}

/** Where the slot in the face comes to lie from the end: the machine's base goes against the stop. */
const milled = (set: Rational, { stopOff, base, kerf }: Bench) => {
  const middle = set.add(stopOff).add(base);
  const half = kerf.div(Rational.TWO);
  return { nearer: middle.sub(half), middle, farther: middle.add(half) };
};

/** Where the two faces of the standing piece come to lie, its reference face toward the end of the other. */
function standing(middle: Rational, thickness: Rational, { base }: Bench) {
  const referenceAt = middle.sub(base);
  return { reference: referenceAt, plain: referenceAt.add(thickness) };
}

const bench = fc.record({
  stopOff: thousandths(-900, 900),
  base: thousandths(3_000, 12_000),
  kerf: thousandths(3_000, 8_000),
});
const set = thousandths(20_000, 150_000);

describe('the stop', () => {
  test('is found exactly from a joint that stands, whatever base and kerf are', () => {
    fc.assert(
      fc.property(bench, set, thousandths(12_000, 30_000), (hidden, at, thickness) => {
        const faces = standing(milled(at, hidden).middle, thickness, hidden);
        expect(String(stopFromJoint(at, faces.reference, ZERO).value)).toBe(String(hidden.stopOff));
      }),
    );
  });

  test('is found from the walls of the slot, no further off than is told, what the base may be off added', () => {
    fc.assert(
      fc.property(bench, set, share, share, share, thousandths(0, 100), (hidden, at, a, b, c, within) => {
        const { nearer, farther } = milled(at, hidden);
        const strays = mm('0.1');
        const written = { value: hidden.base.add(strays.mul(c)), within: strays };
        const walls = { nearer: nearer.add(within.mul(a)), farther: farther.add(within.mul(b)) };
        const found = stopFromWalls(at, walls, written, within);
        expect(found.value.sub(hidden.stopOff).abs().le(found.within)).toBe(true);
        // Two ways of measuring one stop never contradict each other.
        const { reference: face } = standing(milled(at, hidden).middle, mm('18'), hidden);
        expect(agree(found, stopFromJoint(at, face.add(within.mul(a)), within))).toBe(true);
      }),
    );
  });

  test('figures that contradict each other are told apart from those that may both be right', () => {
    const found = { value: mm('0.3'), within: mm('0.05') };
    expect(agree(found, { value: mm('0.5'), within: mm('0.15') })).toBe(true);
    expect(agree(found, { value: mm('0.501'), within: mm('0.15') })).toBe(false);
  });
});

describe('a stop that is off', () => {
  const cabinet = () =>
    sides(shop())
      .part('top, base, shelf', 'level', 'birch18')
      .of('depth', 560, 'shelf, top, base')
      .connect('biscuit20', 'deep5')
      .joint('butt', 'top', 'between lh and rh', flush('top', 'front'), reference('top'))
      .joint('butt', 'base', 'between lh and rh', flush('bottom', 'front'), reference('bottom'))
      .joint('butt', 'shelf', 'between lh and rh', fact(placed('bottom', 350, 'above', 'base.bottom')), flush('front'))
      .build();

  test('moves every slot that was milled against it, and no other, as the bench shows', () => {
    const spec = cabinet();
    const { jig } = spec.shop;
    if (!jig) throw new Error('the shop has lost its jig');
    fc.assert(
      fc.property(thousandths(-900, 900), (off) => {
        const found = fit(spec).fit;
        const moves = stopMoves(found, jig, off);
        let left = moves.halves.length;
        for (const { halves } of found.joints)
          for (const half of halves) {
            const moved = moves.halves.find((one) => one.half === half);
            // The operator sets what the table says; where nothing is set the piece lies at the base itself.
            const at = half.stop?.at ?? ZERO;
            if (half.role !== 'face' || at.isZero()) {
              expect(moved).toBeUndefined();
              continue;
            }
            const { middle } = milled(at, { stopOff: off, base: half.across.sub(at), kerf: ZERO });
            expect(String(moved?.really)).toBe(String(middle));
            left--;
          }
        expect(left).toBe(0);
        expect(moves.halves).toHaveLength(2);
        // Both ends of the shelf are moved alike.
        expect(moves.askew).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });
});
