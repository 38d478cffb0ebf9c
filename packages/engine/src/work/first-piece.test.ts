import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FitResult, FittedJoint, Half } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { fit } from '../pipeline.js';
import { axisOf, opposite, outward, type Side } from '../spec/sides.js';
import type { Jig } from '../spec/stock.js';
import { fixedFirst } from '../testing/fixed-first.fixture.js';
import { BOARD, HOLDS, SHELF, type Shelf, shelfBetweenSides } from '../testing/shelf.fixture.js';
import { jig, shop } from '../testing/shop-builder.js';
import { mm } from '../testing/written.js';
import { type FirstMeasure, type FirstPiece, firstPieces, wallAt } from './first-piece.js';
import { planWork } from './plan.js';

interface Wishes extends Shelf {
  /** Whether the shop writes everything that the bounds of a half ask for; thickness and saw are the parts' own. */
  readonly holds: boolean;
  /** Hundredths of a millimetre. */
  readonly step: number;
}

const wishes: fc.Arbitrary<Wishes> = fc.record({
  ...SHELF,
  holds: fc.boolean(),
  step: fc.integer({ min: 100, max: 300 }),
});

/** The shelf, its plan, and the first piece of each of its halves. */
async function made(
  { holds, step, ...shelf }: Wishes,
  written: readonly string[] = ['step', 'skin'],
  fences: Jig['fences'] = ['left', 'right'],
) {
  const stock = shop({
    materials: [BOARD],
    tolerances: holds ? HOLDS : undefined,
    jig: jig({ fences }),
  });
  const limits = { ...stock.limits, step: Rational.of(step, 100), written };
  const result = fit(shelfBetweenSides(shelf, { ...stock, limits }));
  const items = [{ result, count: 2 }];
  const plan = await planWork(items);
  const pieces = plan.setUps.flatMap((setUp) => firstPieces(setUp, items).map((piece) => ({ setUp, piece })));
  const pieceOf = ({ part, surface, hand }: Half): FirstPiece => {
    const found = pieces.find(
      ({ setUp, piece }) =>
        piece.hand === hand &&
        setUp.operations.some(
          (one) =>
            one.half.hand === hand &&
            one.half.surface === surface &&
            one.pieces.some(({ parts }) => parts.includes(part)),
        ),
    );
    if (!found) throw new Error(`${part} has no first piece at its ${surface}`);
    return found.piece;
  };
  return { result, pieces: pieces.map(({ piece }) => piece), pieceOf };
}

const measure = (piece: FirstPiece, ...what: readonly FirstMeasure['what'][]): FirstMeasure => {
  const found = piece.measures.find((one) => what.includes(one.what));
  if (!found) throw new Error(`nothing is measured: ${what}`);
  return found;
};

/** Somewhere between what a figure may least and most be, or a long way off where there is no bound. */
function pick({ wanted, bounds }: FirstMeasure, percent: number): Rational {
  const least = bounds.least?.at ?? wanted.sub(Rational.of(5));
  const most = bounds.most?.at ?? wanted.add(Rational.of(5));
  return least.add(most.sub(least).mul(Rational.of(percent, 100)));
}

const ends = fc.constantFrom(0, 100);
const percents = fc.oneof(ends, fc.integer({ min: 0, max: 100 }));

/** The side of a joint's parts that their own errors are reckoned at: where they have least to do with it. */
const isNearer = (joint: FittedJoint, kind: 'step' | 'flush', side: Side, result: FitResult): boolean => {
  const [half] = joint.halves as [Half, Half];
  const several = result.errors(joint.id).filter((error) => error.kind === kind).length > 1;
  return !several || (kind === 'step' ? half.from.side : half.datum) === side;
};

describe('a first piece within its bounds', () => {
  test('brings faces and edges together within the step that is let pass, whatever sheet and saw add', async () => {
    const checked = { step: 0, flush: 0 };
    const shares = fc.infiniteStream(percents);
    await fc.assert(
      fc.asyncProperty(wishes, shares, async (wish, share) => {
        const { result, pieceOf } = await made(wish);
        const next = () => share.next().value ?? 0;
        for (const joint of result.fit.joints)
          for (const { kind, side } of result.errors(joint.id)) {
            if ((kind !== 'step' && kind !== 'flush') || !isNearer(joint, kind, side, result)) continue;
            // The slots lie at 0; a part's plane is as far from them as was measured, its other side a size further.
            const plane = (half: Half): Rational => {
              const from = kind === 'step' ? half.from.side : half.datum;
              const found =
                kind === 'step' ? measure(pieceOf(half), 'across') : measure(pieceOf(half), 'first', 'only');
              const to = pick(found, next()).sub(found.wanted).add(planned(half, kind));
              const own = to.mul(Rational.of(outward(from) * outward(side)));
              if (from === side) return own;
              expect(from).toBe(opposite(side));
              const size = result.fit.parts.find(({ id }) => id === half.part)?.extent[axisOf(side)] ?? Rational.ZERO;
              const most =
                kind === 'step' && half.part === 'shelf' ? mm('0.4') : wish.holds ? mm('0.1') : Rational.ZERO;
              return own.add(size).add(most.mul(Rational.of(2 * next() - 100, 100)));
            };
            const [a, b] = joint.halves as [Half, Half];
            const proud = plane(a).sub(plane(b)).abs();
            expect(proud.le(result.spec.shop.limits.step), `${joint.id} ${kind} ${side}: ${proud}`).toBe(true);
            checked[kind]++;
          }
      }),
      fixedFirst({ fixed: 40, numRuns: 80 }, wishes, shares),
    );
    expect(Math.min(checked.step, checked.flush)).toBeGreaterThan(40);
  });

  test('leaves room for the connector, and the skin under the slot', async () => {
    let halves = 0;
    await fc.assert(
      fc.asyncProperty(wishes, async (wish) => {
        const { result, pieceOf } = await made(wish);
        for (const joint of result.fit.joints) {
          const depths = joint.halves.map((half) => measure(pieceOf(half), 'depth').bounds);
          const least = Rational.sum(depths.map(({ least: bound }) => bound?.at ?? Rational.ZERO));
          expect(least.toNumber()).toBeGreaterThanOrEqual(joint.connector?.across.toNumber() ?? Number.NaN);
          const face = joint.halves.findIndex(({ role }) => role === 'face');
          // The sides are of birch18, measured 17.7 ± 0.2, and 3 has to be left.
          expect(depths[face]?.most?.at.toNumber()).toBe(17.5 - 3);
          expect(depths[1 - face]?.most).toBeUndefined();
          halves += depths.length;
        }
      }),
      fixedFirst({ fixed: 15, numRuns: 20 }, wishes),
    );
    expect(halves).toBeGreaterThan(40);
  });
});

const planned = (half: Half, kind: 'step' | 'flush'): Rational =>
  kind === 'step' ? half.across : (half.slots[0]?.fromDatum ?? Rational.ZERO);

const FIELD: Wishes = { from: 'bottom', place: 'bottom', datum: 'rear', setback: 0, holds: true, step: 300 };

describe('what a first piece may be', () => {
  test('is no more than half of the step, and never more than the shop holds', async () => {
    const across = async (wish: Partial<Wishes>) => {
      const { result, pieceOf } = await made({ ...FIELD, ...wish });
      const [joint] = result.fit.joints as [FittedJoint];
      const edge = joint.halves.find(({ role }) => role === 'edge') as Half;
      const { bounds } = measure(pieceOf(edge), 'across');
      return [bounds.least, bounds.most].map((bound) => bound && `${bound.at.toNumber()} ${bound.by}`);
    };
    // 9.5, less the base's 0.1 and dirt's 0.1, or more by the base's 0.1; or either way half of 0.1.
    expect(await across({ step: 300 })).toEqual(['9.3 held', '9.6 held']);
    expect(await across({ step: 10 })).toEqual(['9.45 step', '9.55 step']);
    expect(await across({ step: 300, holds: false })).toEqual(['9.4 held', '9.6 held']);
  });

  test('is closer by what measuring from another side adds, where the jig has no fence for its own', async () => {
    let turned = 0;
    for (const setback of [0, 6, 22]) {
      const { result, pieces } = await made({ ...FIELD, setback }, ['step', 'skin'], ['left']);
      for (const piece of pieces) {
        const { otherwise, half, joint } = piece.operation;
        const asked = joint.halves.find(({ part }) => part === half.part);
        if (!asked || !otherwise || otherwise.pose) continue;
        const found = otherwise.datum ? measure(piece, 'first', 'only') : measure(piece, 'across');
        expect(found.from).toBe(opposite(otherwise.datum ? asked.datum : asked.from.side));
        const { least, most } = found.bounds;
        if (!least || !most) throw new Error('there are no bounds');
        const off = Rational.max(found.wanted.sub(least.at), most.at.sub(found.wanted));
        // The piece itself comes as much longer or shorter as the saw, or the sheet, does.
        expect(otherwise.adds.sign()).toBe(1);
        expect(off.add(otherwise.adds).le(result.spec.shop.limits.step.div(Rational.TWO))).toBe(true);
        turned++;
      }
    }
    expect(turned).toBeGreaterThan(0);
  });

  test('is left open, and said to be, where the shop has written nothing', async () => {
    const { pieces } = await made({ ...FIELD, holds: false }, []);
    expect(pieces.length).toBeGreaterThan(0);
    for (const piece of pieces) {
      expect(measure(piece, 'first', 'only').bounds).toEqual({});
      expect(piece.unsaid).toEqual(
        expect.arrayContaining(['step in limits', 'line in tolerances', 'fence in tolerances']),
      );
    }
  });

  test('is told to both walls of a slot, as far apart as the slot is wide and long', async () => {
    const { pieces } = await made(FIELD);
    const walled = { across: 0, along: 0 };
    for (const { measures, operation } of pieces)
      for (const { what, wanted, toWall } of measures) {
        if (!toWall) {
          expect(['depth', 'width', 'length']).toContain(what);
          continue;
        }
        walled[what === 'across' ? 'across' : 'along']++;
        const walls = (['nearer', 'farther'] as const).map((wall) => {
          const place = wallAt(wanted, toWall, wall);
          return place instanceof Rational ? place.toNumber() : place.value;
        });
        // A disc of 100 plunged 12.3 opens 2·√(12.3 · 87.7).
        const wide = what === 'across' ? 4 : 2 * Math.sqrt(12.3 * 87.7);
        expect((walls[1] ?? 0) - (walls[0] ?? 0)).toBeCloseTo(wide, 9);
        expect(((walls[1] ?? 0) + (walls[0] ?? 0)) / 2).toBeCloseTo(wanted.toNumber(), 9);
        expect(operation.half.depth.toNumber()).toBe(12.3);
      }
    expect(Math.min(walled.across, walled.along)).toBeGreaterThan(0);
  });
});
