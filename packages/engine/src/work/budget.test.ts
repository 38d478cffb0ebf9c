import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SequenceOptions, type Sequencer, sequenceSetups } from '../sequence/sequence.js';
import { fixedFirst } from '../testing/fixed-first.fixture.js';
import { Budget } from './budget.js';
import { USUAL_CHANGES } from './changes.js';
import { byTrying, operations, setting } from './choose.fixture.js';
import { cheapestSettings } from './choose.js';
import { settingKey } from './setting.js';
import { stagesOf } from './stages.js';

/** A clock that stands until an order is reckoned, and what each order was told. */
function bench(each: number) {
  let now = 0;
  const told: SequenceOptions[] = [];
  const sequence: Sequencer = (cost, options = {}) => {
    // Choices are first put in a good order at once, which is not told what time there is.
    if (!options.quick || options.below !== undefined) told.push(options);
    if (!options.quick) now += each;
    return sequenceSetups(cost, options);
  };
  return { clock: () => now, sequence, told, now: () => now };
}

/** Jobs of so many operations that nothing is settled by going through the sets. */
const jobs = fc.array(
  fc.uniqueArray(fc.tuple(fc.nat(1), fc.nat(2), fc.nat(2), fc.nat(2)).map(setting), {
    minLength: 1,
    maxLength: 3,
    selector: settingKey,
  }),
  { minLength: 4, maxLength: 7 },
);

describe('one time for a whole plan', () => {
  test('whatever it is, a plan comes with a bound that is one', async () => {
    let [ranOut, proved] = [0, 0];
    const [limits, each] = [fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 400 })];
    await fc.assert(
      fc.asyncProperty(jobs, limits, each, async (ways, limit, takes) => {
        const stages = stagesOf(operations(ways.map(() => [])), []);
        const { clock, sequence, told, now } = bench(takes);
        const budget = new Budget(limit, clock);
        const found = await cheapestSettings(ways, stages, USUAL_CHANGES, sequence, budget, 0);
        const least = byTrying(ways, []);
        expect(found.atLeast.toNumber()).toBeLessThanOrEqual(least);
        expect(found.change.toNumber()).toBeGreaterThanOrEqual(least);
        expect(found.visits.length).toBeGreaterThan(0);
        if (found.proven) proved++;
        // Begun before the time was up, and no share is more than what is left.
        const timed = told.filter(({ quick }) => !quick);
        if (takes > 0) expect(now()).toBeLessThan(limit + takes);
        timed.forEach(({ timeLimitMs = Number.POSITIVE_INFINITY }, i) => {
          expect(timeLimitMs).toBeLessThanOrEqual(limit - i * takes);
        });
        if (budget.isSpent && budget.ranOut && !found.proven) ranOut++;
      }),
      fixedFirst({ fixed: 60, numRuns: 120 }, jobs, limits, each),
    );
    expect(proved).toBeGreaterThan(20);
    expect(ranOut).toBeGreaterThan(0);
  });

  test('is shared out to the orders that are still to be found', async () => {
    let now = 0;
    const given: (number | undefined)[] = [];
    const sequence: Sequencer = async (_cost, options = {}) => {
      given.push(options.quick ? undefined : options.timeLimitMs);
      return { order: [0], cost: 0, lowerBound: 0, proven: true, ...(options.quick ? { stopped: true } : {}) };
    };
    const budget = new Budget(900, () => now);
    await budget.order(sequence, [[0]], {}, 3);
    now = 500;
    await budget.order(sequence, [[0]], {}, 2);
    expect(budget.ranOut).toBe(false);
    now = 900;
    await budget.order(sequence, [[0]], {}, 1);
    expect(given).toEqual([300, 200, undefined]);
    expect([budget.isSpent, budget.ranOut]).toEqual([true, true]);
  });
});
