import type { PlannedSetUp, PlanRows } from '@dryfit/language/protocol';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { baseOf, compare } from './compare.js';

/** Parts milled in a set-up: their lines by their names. */
type Parts = Readonly<Record<string, string>>;

function setUp(stop: string, spacer: string, parts: Parts): PlannedSetUp {
  const setting = (name: string, words: string) => ({ name, words, anew: false, places: [] });
  return {
    settings: [setting('machine', 'jointer'), setting('spacer', spacer), setting('stop', stop)],
    changes: '',
    change: '1',
    mill: '1',
    pieces: 1,
    loads: 1,
    slots: 1,
    columns: ['Cabinet', 'Part', 'Pieces', 'Lines used (mm)', 'Held', 'Weight'].map((heading) => ({
      heading,
      right: false,
    })),
    rows: Object.entries(parts).map(([part, lines]) => ({
      keys: part.split(', ').map((one) => `Rack 0 ${one} face`),
      cells: ['Rack', part, '4', lines, `by a stop at ${stop}`, '3 kg'],
      places: [],
    })),
    notes: [],
  };
}

const plan = (
  setUps: readonly PlannedSetUp[],
  change = '10',
  mill = '20',
): Pick<PlanRows, 'change' | 'mill' | 'setUps'> => ({
  setUps,
  change,
  mill,
});
const compared = (before: readonly PlannedSetUp[], now: readonly PlannedSetUp[]) =>
  compare(baseOf(plan(before), 0), plan(now));

const shelf = { shelf: '48, 158' };
const sides = { 'lh, rh': '48' };

test('a changed stop or spacer touches its set-up, and says from what to what', () => {
  const { setUps, gone, touched } = compared(
    [setUp('32', 'none', shelf), setUp('none', 'none', sides)],
    [setUp('40', '12 + 10 = 22', shelf), setUp('none', 'none', sides)],
  );
  expect(setUps).toEqual([
    { kind: 'changed', was: 1, words: ['spacer none → 12 + 10 = 22', 'stop 32 → 40'] },
    { kind: 'same', was: 2, words: [] },
  ]);
  expect([gone, touched]).toEqual([[], 1]);
});

test('a part whose stop has changed may get a set-up of its own, or join another one', () => {
  const both = setUp('32', 'none', { ...shelf, ...sides });
  const own = compared([both], [setUp('32', 'none', sides), setUp('40', 'none', shelf)]);
  expect(own.setUps).toEqual([
    { kind: 'changed', was: 1, words: ['no longer shelf of Rack'] },
    { kind: 'new', words: ['shelf of Rack'] },
  ]);
  const joined = compared(
    [setUp('32', 'none', shelf), setUp('40', 'none', sides)],
    [setUp('40', 'none', { ...shelf, ...sides })],
  );
  expect(joined.setUps).toEqual([{ kind: 'changed', was: 2, words: ['now also shelf of Rack'] }]);
  expect(joined.gone).toEqual([{ was: 1, words: 'shelf of Rack: now in set-up 1' }]);
  expect(joined.touched).toBe(2);
});

test('other lines touch a set-up; another name of the cabinet and another weight do not', () => {
  const after = setUp('32', 'none', { shelf: '48, 160' });
  expect(compared([setUp('32', 'none', shelf)], [after]).setUps[0]?.words).toEqual([
    'lines used 48, 158 → 48, 160 (shelf of Rack)',
  ]);
  const [row] = after.rows;
  const renamed = {
    ...after,
    rows: row ? [{ ...row, cells: ['Rack (wide 640)', 'shelf', '4', '48, 160', 'by a stop at 32', '4 kg'] }] : [],
  };
  expect(compared([after], [renamed]).touched).toBe(0);
});

test('what follows from what is set is not said again, what does not is; what is alike is said once', () => {
  const several = (stop: string, lines: string) => setUp(stop, 'none', { shelf: lines, top: lines });
  expect(compared([several('32', '48')], [several('40', '60')]).setUps[0]?.words).toEqual([
    'stop 32 → 40',
    'lines used 48 → 60 (shelf of Rack, top of Rack)',
  ]);
});

test('what is not milled any more is said to be gone', () => {
  expect(compared([setUp('32', 'none', shelf)], [])).toMatchObject({
    setUps: [],
    gone: [{ was: 1, words: 'shelf of Rack: nothing of it is milled any more' }],
  });
});

test('minutes are told where they differ', () => {
  expect(compare(baseOf(plan([]), 0), plan([], '12', '20')).minutes).toEqual(['changing 10 → 12 min']);
  expect(compare(baseOf(plan([]), 0), plan([], '10', '19.5')).minutes).toEqual(['milling 20 → 19.5 min']);
});

test('many parts are counted', () => {
  const parts = Object.fromEntries(['a', 'b', 'c', 'd', 'e', 'f'].map((part): [string, string] => [part, '48']));
  expect(compared([], [setUp('32', 'none', parts)]).setUps[0]?.words).toEqual([
    'a of Rack, b of Rack, c of Rack, 3 more',
  ]);
});

/** Plans in which each part is milled once. */
const plans = fc
  .array(fc.record({ stop: fc.constantFrom('none', '32', '40'), spacer: fc.constantFrom('none', '12') }), {
    maxLength: 8,
  })
  .map((settings) => settings.map(({ stop, spacer }, i) => setUp(stop, spacer, { [`part${i}`]: '48' })));

test('a plan in another order is touched nowhere, and each set-up is the one it was', () => {
  fc.assert(
    fc.property(
      plans.chain((setUps) => fc.tuple(fc.constant(setUps), fc.shuffledSubarray(setUps, { minLength: setUps.length }))),
      ([before, now]) => {
        const { touched, setUps, gone } = compared(before, now);
        expect([touched, gone]).toEqual([0, []]);
        expect(setUps.map(({ was }) => before[(was ?? 0) - 1])).toEqual(now);
      },
    ),
  );
});

test('of two plans every set-up before is told of once, and every one now', () => {
  fc.assert(
    fc.property(plans, plans, (before, now) => {
      const { setUps, gone, touched } = compared(before, now);
      const told = [...setUps.flatMap(({ was }) => was ?? []), ...gone.map(({ was }) => was)];
      expect(told.sort((a, b) => a - b)).toEqual(before.map((_, i) => i + 1));
      expect(setUps.length).toBe(now.length);
      // Untouched means that the same parts are milled with the same settings.
      const words = (all: readonly PlannedSetUp[]) =>
        all.map(({ settings, rows }) => JSON.stringify([settings, rows])).sort();
      expect(touched === 0).toBe(JSON.stringify(words(before)) === JSON.stringify(words(now)));
    }),
  );
});
