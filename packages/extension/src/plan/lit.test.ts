import type { PlannedSetUp, TextPlace } from '@dryfit/language/protocol';
import { expect, test } from 'vitest';
import { litAt, planDrawsOn } from './lit.js';

const lines = (uri: string, from: number, to: number): TextPlace => ({
  uri,
  range: { start: { line: from, character: 2 }, end: { line: to, character: 9 } },
});
const rest = { changes: '', change: '', mill: '', pieces: 1, loads: 1, slots: 1, columns: [], notes: [] };
const row = (...places: readonly TextPlace[]) => ({ keys: [], cells: [], places });
const setUps: PlannedSetUp[] = [
  {
    ...rest,
    settings: [{ name: 'machine', words: '', anew: true, places: [lines('file:///shop', 3, 6)] }],
    rows: [row(lines('file:///rack', 10, 13), lines('file:///rack', 2, 2)), row(lines('file:///rack', 20, 20))],
  },
  { ...rest, settings: [], rows: [row(lines('file:///rack', 30, 31), lines('file:///rack', 2, 2))] },
];
const at = (uri: string, line: number) => litAt({ setUps }, uri, { line, character: 4 });

test('the cursor in a joint lights its row, in the name of a part all rows of the part', () => {
  expect(at('file:///rack', 12)).toEqual({ rows: ['0/0'], settings: [] });
  expect(at('file:///rack', 2)).toEqual({ rows: ['0/0', '1/0'], settings: [] });
  expect(at('file:///rack', 25)).toEqual({ rows: [], settings: [] });
});

test('the cursor in the shop lights what is set by it', () => {
  expect(at('file:///shop', 4)).toEqual({ rows: [], settings: ['0/0'] });
});

test('a plan has to do with every text it leads to', () => {
  expect(
    ['file:///rack', 'file:///shop', 'file:///bin'].map((uri) => planDrawsOn({ setUps, places: [] }, uri)),
  ).toEqual([true, true, false]);
});
