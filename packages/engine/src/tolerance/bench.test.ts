import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FittedJoint, Half } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { workOut } from '../pipeline.js';
import { axisOf, outward, type Side } from '../spec/sides.js';
import type { Tolerances } from '../spec/stock.js';
import { fixedFirst } from '../testing/fixed-first.fixture.js';
import { BOARD, either, HOLDS, oneWay, SHELF, shelfBetweenSides } from '../testing/shelf.fixture.js';
import { jig, shop } from '../testing/shop-builder.js';
import { AsMade } from './as-made.js';
import { sidesAt } from './joint-errors.js';
import { amountOf, stackIn } from './stacks.fixture.js';
import { contributorsIn } from './tried.js';

const ALL: Tolerances = { ...HOLDS, saw: either('0.2'), cup: oneWay('0.3') };

const recipe = fc.record({
  ...SHELF,
  held: fc.boolean(),
});
type Recipe = typeof recipe extends fc.Arbitrary<infer T> ? T : never;

function made({ held, ...shelf }: Recipe) {
  const stock = shop({ materials: [BOARD], tolerances: ALL, jig: jig(held ? { hold: 'clamps' } : {}) });
  const spec = shelfBetweenSides(shelf, stock);
  const { fit, solved } = workOut(spec);
  return new AsMade(spec, solved, fit);
}

/**
 * The bench, redone by hand: each half's slots are where its stop, base, fence, spacers and eye put them; the parts
 * then come together so that the slots meet, and a rule is laid across their sides.
 */
class Bench {
  constructor(
    private readonly as: AsMade,
    private readonly joint: FittedJoint,
    private readonly off: (id: string) => number,
  ) {}

  /** From its datum edge to a slot as milled: the line, less what stands between fence and edge. */
  along(half: Half): number {
    const name = `${this.joint.id} ${half.part}`;
    const stack = half.spacer.stack.map((piece) => piece.toNumber() + this.off(`spacer ${piece} 1`));
    const gap = stack.reduce((a, b) => a + b, 0) + this.off(`dirt fence ${name}`);
    const line = (half.slots[0]?.fromZero.toNumber() ?? 0) + this.off(`line along ${name}`);
    return line + this.off(`fence ${half.hand}`) - gap;
  }

  /** From its reference (a face, or the end its stop stands at) to a slot as milled. */
  across(half: Half): number {
    const name = `${this.joint.id} ${half.part}`;
    const base = this.joint.machine?.base.least.toNumber() ?? 0;
    const set = base + this.off(`machine ${this.joint.machine?.name}`);
    if (half.stop) return set + half.stop.at.toNumber() + this.off(`stop ${name}`) - this.off(`dirt stop ${name}`);
    const bowed = this.as.spec.shop.jig?.hold ? 0 : this.off(`cup ${half.part}`);
    return set - this.off(`dirt under ${name}`) - bowed;
  }

  /** How far the entering part's side stands proud of its host's when the slots meet. */
  proud(side: Side): number {
    const [entering, host] = this.joint.halves as [Half, Half];
    const across = axisOf(side) === axisOf(entering.from.side);
    const from = (half: Half) => (across ? half.from.side : half.datum);
    const slot = (half: Half) => (across ? this.across(half) : this.along(half));
    // Coordinates with the slot at 0, along the outward direction of the side.
    const plane = (half: Half) => {
      const outwardOfDatum = outward(from(half)) * outward(side);
      const datumPlane = slot(half) * outwardOfDatum;
      return from(half) === side ? datumPlane : datumPlane + this.size(half.part, side);
    };
    return plane(entering) - plane(host);
  }

  private size(part: string, side: Side): number {
    const axis = axisOf(side);
    const fitted = this.as.part(part);
    const planned = fitted?.extent[axis]?.toNumber() ?? Number.NaN;
    const thick = fitted?.attitude === 'level' ? axis === 'z' : axis === 'x';
    return planned + this.off(thick ? `thickness ${part} 0` : `saw ${part} ${axis}`);
  }
}

describe('steps and flushness of a joint', () => {
  test('are what comes out when each half is milled with its errors and the slots are brought together', () => {
    let compared = 0;
    const shares = fc.infiniteStream(fc.integer({ min: 0, max: 100 }));
    fc.assert(
      fc.property(recipe, shares, (wishes, percents) => {
        const as = made(wishes);
        const known = new Map<string, number>();
        for (const joint of as.fit.joints) {
          const errors = sidesAt(as, joint);
          const all = errors.flatMap(({ adds }) => stackIn(adds).terms.map(({ of }) => of));
          for (const { id, plus, minus } of all) {
            const share = (percents.next().value ?? 0) / 100;
            if (!known.has(id)) known.set(id, share * plus.toNumber() - (1 - share) * minus.toNumber());
          }
          // What a result does not depend on may be off as well, and must not matter.
          const bench = new Bench(as, joint, (id) => known.get(id) ?? 0.07);
          const off = new Map([...known].map(([id, by]) => [id, Rational.of(Math.round(by * 1e9), 1e9)]));
          for (const error of errors) {
            if (error.kind !== 'step' && error.kind !== 'flush') continue;
            expect(bench.proud(error.side), `${joint.id} ${error.kind} ${error.side}`).toBeCloseTo(
              amountOf(stackIn(error.adds), off).toNumber(),
              7,
            );
            compared++;
          }
        }
      }),
      fixedFirst({ fixed: 80, numRuns: 120 }, recipe, shares),
    );
    expect(compared).toBeGreaterThan(240);
  });

  // Measure both halves from one plane and the sheet's thickness is of no account there: the oldest rule of the bench.
  test('have no thickness in them at the face both halves are measured from, and the whole of it at the other', () => {
    let [kept, entered] = [0, 0];
    fc.assert(
      fc.property(recipe, (wishes) => {
        const as = made(wishes);
        for (const joint of as.fit.joints)
          for (const error of sidesAt(as, joint)) {
            if (error.kind !== 'step') continue;
            const sheets = stackIn(error.adds).terms.filter(({ of }) => of.origin === 'thickness');
            if (wishes.from === error.side) {
              expect(sheets).toEqual([]);
              kept++;
            } else {
              expect(sheets.map(({ of, coefficient }) => `${coefficient} ${of.id}`)).toEqual(['1 thickness shelf 0']);
              entered++;
            }
          }
      }),
      fixedFirst({ fixed: 50, numRuns: 100 }, recipe),
    );
    expect(Math.min(kept, entered)).toBeGreaterThan(10);
  });

  test('have no error of a fixed base in them, since both halves are milled with it', () => {
    fc.assert(
      fc.property(recipe, (wishes) => {
        const as = made(wishes);
        const origins = as.fit.joints.flatMap((joint) =>
          sidesAt(as, joint).flatMap(({ adds }) => contributorsIn(adds).map(({ origin }) => origin)),
        );
        expect(origins).not.toContain('machine');
        expect(origins.includes('cup')).toBe(!wishes.held);
      }),
    );
  });
});
