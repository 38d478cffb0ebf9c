import type { SlotRows } from '@dryfit/language/protocol';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { listed, partsOf, START, sortedBy } from './state.js';

const rowsOf = (rows: readonly (readonly [part: string, from: number, cabinet?: string])[]) =>
  ({
    columns: [
      { heading: 'Part', right: false },
      { heading: 'From', right: true },
    ],
    rows: rows.map(([part, from, cabinet = 'Returns']) => ({
      cells: [
        { text: part, sort: part },
        { text: String(from), sort: from },
      ],
      shapes: [],
      places: [],
      cabinet,
      parts: [part],
    })),
  }) as unknown as SlotRows;

test('rows that are equal keep their order, rising and falling', () => {
  const row = fc.tuple(fc.constantFrom('lh', 'rh', 'top'), fc.integer({ min: 0, max: 3 }));
  fc.assert(
    fc.property(fc.array(row), fc.boolean(), (rows, falling) => {
      const sorted = listed(rowsOf(rows), { ...START, by: 'From', falling });
      expect([...sorted].sort((a, b) => a - b)).toEqual(rows.map((_, i) => i));
      sorted.slice(1).forEach((row, i) => {
        const [a, b] = [sorted[i] as number, row];
        const step = (rows[b]?.[1] as number) - (rows[a]?.[1] as number);
        expect(step === 0 ? b > a : falling ? step < 0 : step > 0).toBe(true);
      });
    }),
  );
});

test('figures are sorted by size and names as people sort them', () => {
  const table = rowsOf([
    ['shelf 10', 9.5],
    ['shelf 2', 100],
  ]);
  expect(listed(table, { ...START, by: 'From' })).toEqual([0, 1]);
  expect(listed(table, { ...START, by: 'Part' })).toEqual([1, 0]);
});

test('a part or cabinet that is no more filters nothing', () => {
  const table = rowsOf([
    ['lh', 1],
    ['rh', 2, 'Other'],
  ]);
  expect(listed(table, { ...START, part: 'rh' })).toEqual([1]);
  expect(listed(table, { ...START, part: 'gone' })).toEqual([0, 1]);
  expect(listed(table, { ...START, cabinet: 'Other' })).toEqual([1]);
  expect(listed(table, { ...START, cabinet: 'Gone' })).toEqual([0, 1]);
  expect(partsOf(table, 'Other')).toEqual(['rh']);
});

test('a heading sorts up, then down, then not at all', () => {
  const once = sortedBy(START, 'From');
  const twice = sortedBy(once, 'From');
  expect([once, twice, sortedBy(twice, 'From')].map(({ by, falling }) => [by, falling])).toEqual([
    ['From', false],
    ['From', true],
    ['', false],
  ]);
  expect(sortedBy(twice, 'Part')).toMatchObject({ by: 'Part', falling: false });
});
