import type { FitResult } from '@dryfit/engine';
import { beforeAll, describe, expect, test } from 'vitest';
import { codesOf, exactly, halfOf, marksOf, sizeOf } from '../support/look.js';
import { fitExample } from '../support/read.js';

// Worked by hand from the example's statements: 1200 over sides of 17.7, 1100 high, 300 deep, back groove 6 wide, 10 in.
describe('the bookcase with a divider, worked by hand', () => {
  let result: FitResult;
  beforeAll(async () => {
    result = await fitExample('bookcase.joinery', 'Bookcase');
  });

  test('shelves are 573.45 by 284 on either side, the divider 284 by 1064.6', () => {
    for (const shelf of ['lshelf 1', 'lshelf 3', 'rshelf 2']) expect(sizeOf(result, shelf)).toBe('573.45 x 284 x 17.7');
    expect(sizeOf(result, 'divider')).toBe('17.7 x 284 x 1064.6');
  });

  test('one spacer of 16, 10 and 6, serves shelves and divider', () => {
    for (const [joint, part] of [
      ['lshelf 1 / lh', 'lshelf 1'],
      ['lshelf 1 / divider', 'lshelf 1'],
      ['divider / base', 'divider'],
    ] as const) {
      const half = halfOf(result, joint, part);
      expect(exactly(half.spacer.width)).toBe('16');
      expect(half.spacer.stack.map((piece) => exactly(piece)).sort()).toEqual(['10', '6']);
      expect(marksOf(half)).toEqual(['64', '144', '224']);
    }
  });

  test('the divider, itself 16 in, takes the shelves at the spacer of 16 as well', () => {
    const half = halfOf(result, 'lshelf 1 / divider', 'divider');
    expect(exactly(half.spacer.width)).toBe('16');
    expect(marksOf(half)).toEqual(['64', '144', '224']);
    expect(marksOf(halfOf(result, 'lshelf 1 / lh', 'lh'))).toEqual(['80', '160', '240']);
  });

  test('the stop is at 290 on the side and at 272.3 on the divider, which stands on the base', () => {
    expect(exactly(halfOf(result, 'lshelf 1 / lh', 'lh').stop?.at)).toBe('290');
    expect(exactly(halfOf(result, 'lshelf 1 / divider', 'divider').stop?.at)).toBe('272.3');
  });

  test('shelves of one kind at different heights are one piece', () => {
    const same = (id: string) => result.fit.parts.find((part) => part.id === id)?.same;
    expect(new Set(['lshelf 1', 'lshelf 2', 'lshelf 3'].map(same)).size).toBe(1);
  });

  test('it can be made', () => {
    expect(codesOf(result.findings)).toEqual([]);
  });
});
