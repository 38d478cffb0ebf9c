import type { SlotRows } from '@dryfit/language/protocol';
import { expect, test } from 'vitest';
import { rowsAt } from './rows.js';

const at = (line: number) => ({ uri: 'a', range: { start: { line, character: 0 }, end: { line, character: 30 } } });
const table = { rows: [{ places: [at(5), at(1)] }, { places: [at(6), at(1)] }] } as unknown as SlotRows;

test('the cursor in a joint marks its rows, in a part those milled into it', () => {
  expect(rowsAt(table, 'a', { line: 6, character: 3 })).toEqual([1]);
  expect(rowsAt(table, 'a', { line: 1, character: 3 })).toEqual([0, 1]);
  expect(rowsAt(table, 'a', { line: 3, character: 3 })).toEqual([]);
  expect(rowsAt(table, 'b', { line: 6, character: 3 })).toEqual([]);
});
