import { describe, expect, test } from 'vitest';
import { oneShelf } from '../support/fixture-shop.js';
import { codesOf, halfOf, marksOf } from '../support/look.js';
import { fitText } from '../support/read.js';

// Popular Woodworking no. 122 (June 2001) p. 26 and no. 130 (October 2002) p. 50: the first biscuit 2 in from the
// edge, then one every 5 to 7 in. The fewest equal intervals that keep to it are ⌈(L − first − last)/most⌉.
describe('biscuits spaced along an edge, Popular Woodworking nos. 122 and 130', () => {
  test('23 1/4 in deep, 2 in from both edges, at most 7 in apart: thirds of an inch do not accumulate', async () => {
    const result = await fitText(oneShelf({ deep: '23 1/4"', pattern: 'first 2"  last 2"  pitch at most 7"' }));
    const half = halfOf(result, 'shelf / lh', 'lh');
    expect(marksOf(half, 'in')).toEqual(['2', '8 5/12', '14 5/6', '21 1/4']);
    expect(marksOf(halfOf(result, 'shelf / lh', 'shelf'), 'in')).toEqual(['2', '8 5/12', '14 5/6', '21 1/4']);
    expect(codesOf(result.findings)).toEqual([]);
  });

  test('560 mm deep, 50 mm from both edges, at most 150 mm apart', async () => {
    const result = await fitText(oneShelf({ deep: '560mm', pattern: 'first 50mm  last 50mm  pitch at most 150mm' }));
    expect(marksOf(halfOf(result, 'shelf / lh', 'lh'))).toEqual(['50', '165', '280', '395', '510']);
  });

  // Of each 560 mm joint: 50 − 32.8437 = 17.1563 of wall to the edge; so much is let pass and no more.
  test.each([
    ['17.156mm', false],
    ['17.157mm', true],
  ])('a limit of %s to the edge is broken: %s', async (edge, broken) => {
    const result = await fitText(oneShelf({ edge, pattern: 'first 50mm  last 50mm  pitch at most 150mm' }));
    expect(codesOf(result.findings).includes('slot-near-edge')).toBe(broken);
  });
});

// Encyclopaedia article on the 32 mm system (which no standard defines): rows 37 mm from front and rear, holes 32 mm
// apart, so that a balanced depth is a multiple of 32 mm and 74 mm more.
describe('lines 32 mm apart, 37 mm from front and rear', () => {
  const pattern = 'first 37mm  last 37mm  pitch 32mm';
  const last = async (deep: string): Promise<string | undefined> => {
    const result = await fitText(oneShelf({ deep, pattern, edge: '0mm' }));
    return marksOf(halfOf(result, 'shelf / lh', 'lh')).at(-1);
  };

  test.each([
    ['522mm', '485'],
    ['554mm', '517'],
    ['586mm', '549'],
  ])('%s deep is balanced: the last line is 37 from the other edge', async (deep, mark) => {
    expect(await last(deep)).toBe(mark);
  });

  test('560 mm deep is not: the lines stop 43 short', async () => {
    expect(await last('560mm')).toBe('517');
  });
});

// The same system drilled by inches: ten holes 1 1/4 in apart instead of 32 mm end 2.25 mm short, at 1 17/64 in they
// end 1.321875 mm beyond. Exact arithmetic with the inch of NBS Circular 572 (1960).
test.each([
  ['1 1/4"', '322.75'],
  ['1 17/64"', '326.321875'],
])('ten lines %s apart from 37 mm end at %s instead of 325', async (pitch, last) => {
  const tenth = async (step: string): Promise<string | undefined> => {
    const result = await fitText(
      oneShelf({ deep: '400mm', pattern: `first 37mm  last 10mm  pitch ${step}`, edge: '0mm' }),
    );
    return marksOf(halfOf(result, 'shelf / lh', 'lh'))[9];
  };
  expect(await tenth('32mm')).toBe('325');
  expect(await tenth(pitch)).toBe(last);
});

// Plane geometry: one #20 slot (65.6874 long) with 5 mm of wall on both sides needs 75.687 of length, two with 5 mm
// between them 146.375.
describe('the least length for biscuits of 23 mm with 5 mm of wall', () => {
  test.each([
    ['75.688mm', '37.844mm', []],
    ['75.687mm', '37.8435mm', ['slot-near-edge']],
  ])('one in %s', async (deep, line, codes) => {
    const facts = `bottom 300mm above lh.bottom  flush front, rear  connect plate by lines ${line}`;
    expect(codesOf((await fitText(oneShelf({ deep, facts }))).findings)).toEqual(codes);
  });

  test.each([
    ['146.376mm', []],
    ['146.374mm', ['pair-too-short']],
  ])('two in %s', async (deep, codes) => {
    const pattern = 'first 37.844mm  last 37.844mm';
    expect(codesOf((await fitText(oneShelf({ deep, pattern, skin: '5mm' }))).findings)).toEqual(codes);
  });
});
