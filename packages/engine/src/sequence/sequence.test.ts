import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedFirst } from '../testing/fixed-first.fixture.js';
import { type Precedence, problemOf, tourCost } from './problem.js';
import { closeIn } from './program.js';
import { sequenceSetups } from './sequence.js';
import { solver } from './solver.js';
import { cheapestBySets } from './subsets.js';

type Matrix = readonly (readonly number[])[];

/** Costs, some steps forbidden, with precedences that an order can keep. */
const instances = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).chain((n) =>
    fc.record({
      cost: fc.array(
        fc.array(
          fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 0, max: 30 }) }, fc.constant(Number.POSITIVE_INFINITY)),
          {
            minLength: n,
            maxLength: n,
          },
        ),
        { minLength: n, maxLength: n },
      ),
      precedences: fc
        .array(fc.tuple(fc.nat({ max: n - 1 }), fc.nat({ max: n - 1 })), { maxLength: n })
        .map((pairs) => pairs.filter(([a, b]) => a !== b).map(([a, b]): Precedence => (a < b ? [a, b] : [b, a]))),
      cyclic: fc.boolean(),
      named: fc.shuffledSubarray(
        Array.from({ length: n }, (_, i) => i),
        { minLength: n, maxLength: n },
      ),
    }),
  );

/** Another naming of the set-ups, so that precedences do not only run upward; a closed tour keeps its start. */
function renamed(precedences: readonly Precedence[], named: readonly number[], cyclic: boolean): Precedence[] {
  if (cyclic) return [...precedences];
  return precedences.map(([a, b]): Precedence => [named[a] ?? a, named[b] ?? b]);
}

function* orders(items: readonly number[]): Generator<number[]> {
  if (items.length === 0) yield [];
  for (const [i, first] of items.entries())
    for (const rest of orders([...items.slice(0, i), ...items.slice(i + 1)])) yield [first, ...rest];
}

const costOf = (cost: Matrix, order: readonly number[], cyclic: boolean): number =>
  order.reduce((sum, node, i) => {
    const next = order[i + 1] ?? (cyclic ? order[0] : undefined);
    return next === undefined ? sum : sum + (cost[node]?.[next] ?? 0);
  }, 0);

const keeps = (order: readonly number[], precedences: readonly Precedence[]): boolean =>
  precedences.every(([a, b]) => order.indexOf(a) < order.indexOf(b));

/** The least cost over every order there is. */
function byTrying(cost: Matrix, precedences: readonly Precedence[], cyclic: boolean): number {
  let least = Number.POSITIVE_INFINITY;
  for (const order of orders(cost.map((_, i) => i))) {
    if ((cyclic && order[0] !== 0) || !keeps(order, precedences)) continue;
    least = Math.min(least, cyclic && order.length === 1 ? 0 : costOf(cost, order, cyclic));
  }
  return least;
}

describe('the cheapest order', () => {
  test('is what trying every order finds, for up to 8 set-ups', async () => {
    await fc.assert(
      fc.asyncProperty(instances(1, 7), async ({ cost, precedences, cyclic, named }) => {
        const before = renamed(precedences, named, cyclic);
        const found = await sequenceSetups(cost, { precedences: before, cyclic });
        const least = byTrying(cost, before, cyclic);
        expect([found.cost, found.lowerBound, found.proven]).toEqual([least, least, true]);
        if (!Number.isFinite(least)) return;
        expect([...found.order].sort((a, b) => a - b)).toEqual(cost.map((_, i) => i));
        expect(keeps(found.order, before)).toBe(true);
        expect(cost.length === 1 ? 0 : costOf(cost, found.order, cyclic)).toBe(found.cost);
      }),
      { numRuns: 120 },
    );
    const eight = fc.sample(instances(8, 8), { seed: 8, numRuns: 3 });
    for (const { cost, precedences } of eight)
      expect((await sequenceSetups(cost, { precedences })).cost).toBe(byTrying(cost, precedences, false));
  });

  test('comes out of linear programs as it does out of the sets visited', async () => {
    const highs = await solver();
    await fc.assert(
      fc.property(instances(6, 13), ({ cost, precedences, cyclic, named }) => {
        const problem = problemOf(cost, renamed(precedences, named, cyclic), cyclic);
        const bySets = cheapestBySets(problem, Number.POSITIVE_INFINITY);
        const none = { order: undefined, cost: Number.POSITIVE_INFINITY, lowerBound: Number.NEGATIVE_INFINITY };
        const closed = closeIn(highs, problem, none, 20_000);
        if (bySets === 'too many') throw new Error('too many sets for a small instance');
        const least = bySets === 'none' ? Number.POSITIVE_INFINITY : bySets.cost;
        expect([closed.cost, closed.lowerBound]).toEqual([least, least]);
        if (closed.order) expect(tourCost(problem, closed.order)).toBe(least);
      }),
      { numRuns: 60 },
    );
  });

  test('is bounded without the solver as well, and found where the sets visited are few', async () => {
    for (const { cost: drawn, precedences } of fc.sample(instances(28, 30), { seed: 30, numRuns: 1 })) {
      const cost = drawn.map((row) => row.map((one) => one + 5));
      const [exact, plain] = [
        await sequenceSetups(cost, { precedences, timeLimitMs: 500 }),
        await sequenceSetups(cost, { precedences, withoutSolver: true }),
      ];
      expect(plain.cost).toBeGreaterThanOrEqual(exact.lowerBound);
      expect(plain.lowerBound).toBeLessThanOrEqual(exact.cost);
      expect(plain.lowerBound).toBeGreaterThanOrEqual(5 * (cost.length - 1));
      expect(plain.proven).toBe(plain.cost === plain.lowerBound);
      expect(keeps(plain.order, precedences)).toBe(true);
      expect([...plain.order].sort((a, b) => a - b)).toEqual(cost.map((_, i) => i));
    }
    for (const { cost, precedences } of fc.sample(instances(9, 9), { seed: 9, numRuns: 5 }))
      expect(await sequenceSetups(cost, { precedences, withoutSolver: true })).toEqual(
        await sequenceSetups(cost, { precedences }),
      );
  });

  test('is not sought further than is of use, and what is told of it is so', async () => {
    const seen = { better: 0, 'none better': 0, quick: 0 };
    const [many, part] = [instances(12, 16), fc.integer({ min: 50, max: 150 })];
    await fc.assert(
      fc.asyncProperty(many, part, async ({ cost, precedences }, percent) => {
        const best = await sequenceSetups(cost, { precedences });
        fc.pre(Number.isFinite(best.cost) && best.proven);
        const below = Math.round((best.cost * percent) / 100);
        for (const quick of [false, true]) {
          const found = await sequenceSetups(cost, { precedences, below, quick });
          expect(found.lowerBound).toBeLessThanOrEqual(best.cost);
          expect(found.cost).toBeGreaterThanOrEqual(best.cost);
          expect(found.proven).toBe(found.cost === found.lowerBound);
          if (quick) seen.quick++;
          else if (best.cost < below) {
            expect(found.cost).toBe(best.cost);
            seen.better++;
          } else {
            expect(found.lowerBound).toBeGreaterThanOrEqual(Math.min(below, best.cost));
            seen['none better']++;
          }
        }
        // The bound given, it is met and no more is asked.
        const met = await sequenceSetups(cost, { precedences, atLeast: best.cost });
        expect([met.cost, met.lowerBound, met.proven]).toEqual([best.cost, best.cost, true]);
      }),
      fixedFirst({ fixed: 20, numRuns: 40 }, many, part),
    );
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(3);
  });

  test('is the same every time', async () => {
    const [instance] = fc.sample(instances(9, 9), { seed: 3, numRuns: 1 });
    const cost = instance?.cost ?? [];
    expect(await sequenceSetups(cost)).toEqual(await sequenceSetups(cost));
  });

  test('of ten operations that ask for four settings changes three times, not nine', async () => {
    // Common practice, no source: operations in the order A B A C B A D A B A, a change of setting costs 4.
    const settings = [...'ABACBADABA'];
    const cost = settings.map((from) => settings.map((to) => (from === to ? 0 : 4)));
    const naive = costOf(
      cost,
      settings.map((_, i) => i),
      false,
    );
    const { order, cost: least } = await sequenceSetups(cost);
    expect([naive / 4 + 1, least / 4 + 1]).toEqual([10, 4]);
    expect(order.map((i) => settings[i]).join('')).toMatch(/^(A+|B+|C|D){4}$/);
  });
});

describe('what cannot be meant', () => {
  test.each([
    ['a row too short', [[0, 1], [1]], {}, /row 1 of the costs has 1/],
    [
      'no number',
      [
        [0, Number.NaN],
        [1, 0],
      ],
      {},
      /cost from 0 to 1 is NaN/,
    ],
    [
      'a set-up that is not there',
      [
        [0, 1],
        [1, 0],
      ],
      { precedences: [[0, 2]] as Precedence[] },
      /only set-ups 0 to 1/,
    ],
    [
      'a circle',
      [
        [0, 1, 1],
        [1, 0, 1],
        [1, 1, 0],
      ],
      {
        precedences: [
          [0, 1],
          [1, 2],
          [2, 0],
        ] as Precedence[],
      },
      /in a circle: 0 before 1 before 2 before 0/,
    ],
    [
      'a closed tour that should not start first',
      [
        [0, 1],
        [1, 0],
      ],
      { precedences: [[1, 0]] as Precedence[], cyclic: true },
      /starts at 0/,
    ],
  ])('%s', async (_, cost, options, words) => {
    await expect(sequenceSetups(cost, options)).rejects.toThrow(words);
  });
});
