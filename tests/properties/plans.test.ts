import { type FitResult, type Plan, planWork, Rational, type Setting, type WorkOrder } from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { rack } from '../support/cabinets/rack.js';
import { examineExample, examineText } from '../support/read.js';

/** Minutes a change takes, reckoned apart from the engine: what the language has where the shop says nothing. */
const MINUTES = { machine: 4, depth: 2, base: 2, pose: 1, pattern: 3, spacer: 1, stop: 1 };

function minutes(from: Setting | undefined, to: Setting): number {
  const word = (setting: Setting | undefined, what: keyof typeof MINUTES): string => {
    if (!setting) return 'empty bench';
    const { spacer } = setting;
    const between = spacer.kind === 'stock' ? spacer.stack : spacer.kind === 'cut' ? [spacer.width] : [];
    return {
      machine: setting.machine,
      depth: `${setting.machine} ${setting.depth}`,
      base: `${setting.machine} ${setting.base}`,
      pose: `${setting.pose.surface} ${setting.pose.reference}`,
      pattern: setting.lines.join(),
      spacer: `${spacer.kind} ${between.join()}`,
      stop: String(setting.stop),
    }[what];
  };
  const things = Object.keys(MINUTES) as (keyof typeof MINUTES)[];
  return things.reduce((sum, what) => {
    // An empty bench has no stop to take away.
    const same = !from && what === 'stop' ? to.stop === undefined : from && word(from, what) === word(to, what);
    return sum + (same ? 0 : MINUTES[what]);
  }, 0);
}

function* orders<T>(items: readonly T[]): Generator<T[]> {
  if (items.length === 0) yield [];
  for (const [i, first] of items.entries())
    for (const rest of orders([...items.slice(0, i), ...items.slice(i + 1)])) yield [first, ...rest];
}

const costOf = (settings: readonly Setting[]): number =>
  settings.reduce((sum, setting, i) => sum + minutes(settings[i - 1], setting), 0);

function checked(plan: Plan, results: readonly FitResult[], count: number): void {
  const settings = plan.setUps.map(({ setting }) => setting);
  expect(plan.change.toNumber()).toBeCloseTo(costOf(settings), 9);
  expect(plan.atLeast.le(plan.change)).toBe(true);
  expect(plan.change.le(plan.grouped.change)).toBe(true);
  expect(plan.grouped.change.le(plan.naive.change)).toBe(true);
  expect(plan.setUps.length).toBeLessThanOrEqual(plan.grouped.setUps);
  // Every slot is milled once in every piece.
  const wanted = results.flatMap(({ fit }) => fit.joints.flatMap(({ halves }) => halves.flatMap(({ slots }) => slots)));
  expect(plan.setUps.reduce((sum, { slots }) => sum + slots, 0)).toBe(wanted.length * count);
  for (const { operations, beside, alike, loads, setting, spacers } of plan.setUps) {
    const owned = results[0]?.spec.shop.jig?.spacers ?? [];
    // A piece of the shop stands in one place at a time, and no fence goes without.
    for (const { width, count: needed } of spacers?.needed ?? [])
      expect(owned.filter((one) => one.equals(width)).length).toBeGreaterThanOrEqual(needed);
    if (setting.spacer.kind === 'stock' && beside.length > 0) {
      const pieces = [...(spacers?.left ?? []), ...(spacers?.right ?? [])].map(String).sort();
      const left = owned.map(String);
      for (const piece of pieces)
        expect(left.splice(left.indexOf(piece), left.includes(piece) ? 1 : 0)).toEqual([piece]);
      const [atLeft, atRight] = [spacers?.left, spacers?.right].map((stack) => Rational.sum(stack ?? []));
      expect(atLeft?.equals(atRight ?? Rational.ZERO)).toBe(true);
    }
    const pieces = operations.reduce((sum, operation) => sum + operation.count, 0);
    const spared = alike.reduce((sum, row) => sum + row.times * (row.pieces - 1), 0);
    expect(loads).toBe(pieces - beside.reduce((sum, { times }) => sum + times, 0) - spared);
    const set = new Set(setting.lines.map(String));
    for (const { half } of operations) for (const { fromZero } of half.slots) expect(set).toContain(String(fromZero));
    for (const { operation } of alike) expect(operations).toContain(operation);
    for (const { left, right } of beside) {
      expect([left.half.hand, right.half.hand]).toEqual(['left', 'right']);
      expect(operations).toContain(left);
      expect(operations).toContain(right);
    }
  }
}

describe('the plan of a job', () => {
  test('costs what its changes cost, and no more than grouping alone or going cabinet by cabinet', async () => {
    await fc.assert(
      fc.asyncProperty(plans, plans, fc.integer({ min: 1, max: 4 }), async (one, other, count) => {
        const read = await Promise.all([examineText(write(one, {})), examineText(write(other, {}))]);
        // Both are planned on the first one's bench.
        const results = read.flatMap((found) => found.results).slice(0, 1);
        checked(await planWork(results.map((result) => ({ result, count }))), results, count);
      }),
      { numRuns: 40 },
    );
  });

  test('has no cheaper order, tried one by one', async () => {
    for (const name of ['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth']) {
      const { cabinets } = await examineExample(`${name}.joinery`);
      const plan = await planWork(cabinets.map((result) => ({ result, count: 1 })));
      const settings = plan.setUps.map(({ setting }) => setting);
      if (settings.length > 7) continue;
      const least = Math.min(...[...orders(settings)].map(costOf));
      expect([name, plan.proven, plan.change.toNumber()]).toEqual([name, true, least]);
    }
  });

  test('of a job is that of its cabinets together, and pieces that are the same are milled together', async () => {
    const { jobs } = await examineExample('periodicals.joinery');
    const lines = jobs[0]?.lines ?? [];
    const plan = await planWork(lines.map(({ result, count }) => ({ result, count })));
    // Four of 600 and two of 450: five patterned lines in one, three of the same in the other.
    expect(plan.setUps).toHaveLength(4);
    expect(plan.naive.setUps).toBeGreaterThan(plan.setUps.length);
    expect(plan.proven).toBe(true);
  });
});

/** Orders among the parts of a cabinet, some of which contradict each other. */
const ordersOf = (result: FitResult, picks: readonly (readonly [number, number, boolean])[]): WorkOrder[] => {
  const kinds = [...new Set(result.spec.parts.map(({ kind }) => kind))];
  const of = (pick: number) => ({
    cabinet: result.fit.name,
    parts: [{ name: kinds[pick % kinds.length] ?? '' }],
  });
  const { source } = result.spec;
  return picks.map(([first, next, late]) =>
    late ? { kind: 'late', parts: of(first), source } : { kind: 'before', first: of(first), next: of(next), source },
  );
};

describe('the order that a job asks for', () => {
  test('is kept by the plan and by what it is compared with, but for what contradicts what is asked before', async () => {
    let [kept, rings, again] = [0, 0, 0];
    const counts = fc.integer({ min: 1, max: 3 });
    const picks = fc.array(fc.tuple(fc.nat(12), fc.nat(12), fc.boolean()), { minLength: 1, maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(plans, picks, counts, async (made, asked, count) => {
        const { results } = await examineText(write(made, {}));
        const [result] = results;
        if (!result) return;
        const orders = ordersOf(result, asked);
        const plan = await planWork([{ result, count }], { orders });
        checked(plan, [result], count);
        // Which part must be milled before which, by going through the orders one by one.
        const kinds = [...new Set(result.spec.parts.map(({ kind }) => kind))];
        const pairs = new Set<string>();
        const reaches = (a: string, b: string, seen = new Set<string>()): boolean =>
          pairs.has(`${a} ${b}`) ||
          kinds.some((one) => pairs.has(`${a} ${one}`) && !seen.has(one) && reaches(one, b, seen.add(one)));
        const lates = new Set(
          orders.flatMap((order) => (order.kind === 'late' ? [order.parts.parts[0]?.name ?? ''] : [])),
        );
        const first = orders.findIndex(({ kind }) => kind === 'late');
        // A kind of which nothing is milled holds nothing up.
        const milled = new Set(plan.setUps.flatMap(({ operations }) => operations.flatMap(({ part }) => part.kind)));
        orders.forEach((order, i) => {
          if (order.kind === 'late' && i !== first) return;
          const steps =
            order.kind === 'late'
              ? kinds.filter((kind) => !lates.has(kind)).flatMap((kind) => [...lates].map((late) => [kind, late]))
              : [[order.first.parts[0]?.name ?? '', order.next.parts[0]?.name ?? '']];
          const real = steps.filter((step) => step.every((kind) => milled.has(kind ?? '')));
          if (real.some(([a = '', b = '']) => a === b || reaches(b, a))) rings++;
          else for (const [a, b] of real) pairs.add(`${a} ${b}`);
        });
        const order = plan.setUps.flatMap(({ operations }) => operations.map(({ part }) => part.kind));
        for (const pair of pairs) {
          const [before = '', after = ''] = pair.split(' ');
          expect(order.lastIndexOf(before)).toBeLessThan(order.indexOf(after));
          kept++;
        }
        again += plan.setUps.filter((setUp) => setUp.again !== undefined).length;
      }),
      fixedFirst({ fixed: 30, numRuns: 50 }, plans, picks, counts),
    );
    expect([kept > 20, rings > 0, again > 0]).toEqual([true, true, true]);
  });
});

/** Two shelves, one by a long pattern and one by a short one, in a cabinet as deep as told. */
const shelves = (deep: number, lines: string): string =>
  rack(
    deep,
    ['by long', 'by short'],
    `pattern long { lines 70, 180, 270, 420, 500 }\npattern short { lines ${lines} }`,
  );

const planOf = async (text: string): Promise<Plan> => {
  const { results } = await examineText(text);
  return planWork(results.map((result) => ({ result, count: 1 })));
};

describe('an operation that can be set up in more than one way', () => {
  test('takes the pattern that is set up anyway, if that has all its lines', async () => {
    const same = (await planOf(shelves(320, '70, 180, 270'))).setUps.map(({ setting }) => setting.pattern);
    expect(new Set(same).size).toBe(1);
    const other = (await planOf(shelves(320, '80, 180, 270'))).setUps.map(({ setting }) => setting.pattern);
    expect(new Set(other).size).toBe(2);
  });

  test('is milled on its own lines all the same', async () => {
    const plan = await planOf(shelves(320, '70, 180, 270'));
    const used = plan.setUps.flatMap(({ operations }) =>
      operations.map(({ half }) => half.slots.map(({ fromZero }) => String(fromZero)).join()),
    );
    expect(new Set(used)).toEqual(new Set(['70,180,270']));
  });
});

// Common practice, no source: on a bed of 900 a side of 560 and one of 320 lie beside each other, two of 560 do not.
describe('pieces beside each other', () => {
  const pairs = async (deep: number) =>
    (await planOf(shelves(deep, '70, 180, 270'))).setUps.reduce((sum, { beside }) => sum + beside.length, 0);

  test('two of 320 fit on a bed of 900, two of 450 just so, two of 560 do not', async () => {
    expect(await pairs(320)).toBeGreaterThan(0);
    expect(await pairs(450)).toBeGreaterThan(0);
    expect(await pairs(451)).toBe(0);
    expect(await pairs(560)).toBe(0);
  });
});
