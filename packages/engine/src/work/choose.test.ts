import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sequenceSetups } from '../sequence/sequence.js';
import type { WorkOrder } from '../spec/order.js';
import { fixedFirst } from '../testing/fixed-first.fixture.js';
import { Budget } from './budget.js';
import { USUAL_CHANGES } from './changes.js';
import { before, byTrying, late, operations, type Pair, setting } from './choose.fixture.js';
import { cheapestSettings } from './choose.js';
import type { Operation } from './operation.js';
import { type Setting, settingKey } from './setting.js';
import { comesBefore, firstRole, LATE, nextRole, stagesOf } from './stages.js';

/** Settings out of few, so that several operations share some; and orders that can all be kept. */
const jobs = fc.integer({ min: 1, max: 8 }).chain((count) => {
  const one = fc.tuple(fc.nat(1), fc.nat(1), fc.nat(2), fc.nat(2)).map(setting);
  const pool = fc.array(one, { minLength: 1, maxLength: 4 });
  const order = fc.record({
    pivot: fc.nat(count),
    first: fc.array(fc.nat(count - 1), { minLength: 2, maxLength: 5 }),
    next: fc.array(fc.nat(count - 1), { minLength: 2, maxLength: 5 }),
  });
  return fc.record({
    ways: pool.chain((settings) =>
      fc.array(fc.uniqueArray(fc.constantFrom(...settings), { minLength: 1, maxLength: 2, selector: settingKey }), {
        minLength: count,
        maxLength: count,
      }),
    ),
    orders: fc.array(order, { maxLength: 4 }),
    named: fc.shuffledSubarray(
      Array.from({ length: count }, (_, i) => i),
      { minLength: count, maxLength: count },
    ),
  });
});

/** Which operation must be milled before which: those below the pivot of an order before those above it. */
function pairsOf({
  orders,
  named,
}: {
  orders: readonly { pivot: number; first: number[]; next: number[] }[];
  named: number[];
}) {
  const count = named.length;
  const own = (list: readonly number[], fits: (i: number) => boolean) =>
    [...new Set(list)].filter((i) => i < count && fits(i)).map((i) => named[i] ?? i);
  return orders.map(({ pivot, first, next }) => ({
    first: own(first, (i) => i < pivot),
    next: own(next, (i) => i >= pivot),
  }));
}

const sameKey = (a: Setting, b: Setting): boolean => settingKey(a) === settingKey(b);

describe('settings and their order, some work having to come first', () => {
  test('cost what trying all of it finds, and never come too early', async () => {
    let proved = 0;
    await fc.assert(
      fc.asyncProperty(jobs, async (job) => {
        const { ways } = job;
        const orders = pairsOf(job);
        const pairs = orders.flatMap(({ first, next }) => first.flatMap((a) => next.map((b): Pair => [a, b])));
        const roles = ways.map((_, i) =>
          orders.flatMap(({ first, next }, k) => [
            ...(first.includes(i) ? [firstRole(k)] : []),
            ...(next.includes(i) ? [nextRole(k)] : []),
          ]),
        );
        const stages = stagesOf(
          operations(roles),
          orders.map(() => before),
        );
        const { visits, change, atLeast, proven } = await cheapestSettings(ways, stages, USUAL_CHANGES, sequenceSetups);
        expect(change.toNumber()).toBe(byTrying(ways, pairs));
        expect([proven, atLeast.equals(change)]).toEqual([true, true]);
        const bySequence = await cheapestSettings(ways, stages, USUAL_CHANGES, sequenceSetups, new Budget(10_000), 0);
        expect(bySequence.atLeast.le(change)).toBe(true);
        if (bySequence.proven) {
          expect(bySequence.change.equals(change)).toBe(true);
          proved++;
        }
        const placeOf = (i: number) =>
          visits.findIndex(
            (visit) => visit.stage === stages.of[i] && ways[i]?.some((way) => sameKey(way, visit.setting)),
          );
        for (const [first, next] of pairs) expect(placeOf(first)).toBeLessThan(placeOf(next));
        expect(ways.every((_, i) => placeOf(i) >= 0)).toBe(true);
      }),
      fixedFirst({ fixed: 100, numRuns: 400 }, jobs),
    );
    expect(proved).toBeGreaterThan(20);
  });

  test('where there are too many choices to try each, the bound is one all the same', async () => {
    let proved = 0;
    const many = fc.record({
      ways: fc.array(
        fc.uniqueArray(fc.tuple(fc.nat(1), fc.nat(2), fc.nat(2), fc.nat(2)).map(setting), {
          minLength: 4,
          maxLength: 4,
          selector: settingKey,
        }),
        { minLength: 6, maxLength: 6 },
      ),
      first: fc.subarray([0, 1, 2]),
      next: fc.subarray([3, 4, 5]),
    });
    await fc.assert(
      fc.asyncProperty(many, async ({ ways, first, next }) => {
        const roles = ways.map((_, i) => [
          ...(first.includes(i) ? [firstRole(0)] : []),
          ...(next.includes(i) ? [nextRole(0)] : []),
        ]);
        const stages = stagesOf(operations(roles), [before]);
        const { change, atLeast, proven } = await cheapestSettings(
          ways,
          stages,
          USUAL_CHANGES,
          sequenceSetups,
          new Budget(10_000),
          0,
        );
        const least = byTrying(
          ways,
          first.flatMap((a) => next.map((b): Pair => [a, b])),
        );
        expect(atLeast.toNumber()).toBeLessThanOrEqual(least);
        expect(change.toNumber()).toBeGreaterThanOrEqual(least);
        if (proven) {
          expect(change.toNumber()).toBe(least);
          proved++;
        }
      }),
      fixedFirst({ fixed: 30, numRuns: 60 }, many),
    );
    expect(proved).toBeGreaterThan(0);
  });

  test('the same setting before and after: A, then B, then A again only where B must come between', async () => {
    const [a, b] = [setting([0, 0, 0, 0]), setting([0, 0, 1, 0])];
    const planned = async (roles: readonly (readonly string[])[], orders: readonly WorkOrder[]) => {
      const stages = stagesOf(operations(roles), orders);
      const { visits } = await cheapestSettings([[a], [b], [a]], stages, USUAL_CHANGES, sequenceSetups);
      return visits.map((visit) => (visit.setting === b ? 'B' : 'A')).join('');
    };
    expect(await planned([[firstRole(0)], [nextRole(0), firstRole(1)], [nextRole(1)]], [before, before])).toBe('ABA');
    // The last waits for the first only: both stand at the boundary, and A is set up once.
    expect(await planned([[firstRole(0)], [], [nextRole(0)]], [before])).toMatch(/^(AAB|BAA)$/);
    expect(await planned([[], [], [LATE]], [late])).toBe('BAA');
  });
});

describe('stages', () => {
  test('an order that contradicts those before it is left aside', () => {
    const own = operations([
      [firstRole(0), nextRole(1)],
      [nextRole(0), firstRole(1)],
    ]);
    const stages = stagesOf(own, [before, before]);
    const [one, two] = own as readonly [Operation, Operation];
    expect([comesBefore(stages, one, two), comesBefore(stages, two, one)]).toEqual([true, false]);
  });

  test('a part that is to come before itself stays where it is', () => {
    const own = operations([[firstRole(0), nextRole(0)], []]);
    const stages = stagesOf(own, [before]);
    expect(stages.before.every((earlier) => earlier.size === 0)).toBe(true);
  });

  test('what waits in turn waits for all of it, and what is asked twice is asked once', () => {
    const own = operations([[firstRole(0)], [nextRole(0), firstRole(1)], [nextRole(1)], [LATE], [LATE]]);
    const stages = stagesOf(own, [before, before, late, late]);
    const at = (i: number, j: number) => comesBefore(stages, own[i] as Operation, own[j] as Operation);
    expect([at(0, 2), at(2, 0), at(0, 3), at(2, 3), at(3, 4), at(4, 3)]).toEqual([
      true,
      false,
      true,
      true,
      false,
      false,
    ]);
    expect(stages.of[3]).toBe(stages.of[4]);
  });
});
