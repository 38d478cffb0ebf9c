import type { DrawnFile, TextPlace } from '@dryfit/language/protocol';
import { expect, test } from 'vitest';
import { drawsOn, litBy, Turns } from './linking.js';

const place = (uri: string, line: number, from: number, to: number, endLine = line): TextPlace => ({
  uri,
  range: { start: { line, character: from }, end: { line: endLine, character: to } },
});

const drawn = {
  cabinets: [
    {
      scene: { title: 'Returns' },
      places: {
        'part lh': [place('a', 1, 7, 9), place('a', 4, 2, 3, 8)],
        'slot 1': [place('a', 4, 2, 3, 8), place('shop', 9, 0, 20)],
      },
    },
    { scene: { title: 'Other' }, places: { 'part lh': [place('a', 12, 7, 9)] } },
  ],
} as unknown as DrawnFile;

test('a cursor lights up what its place gives, and more faintly what it names', () => {
  expect(litBy(drawn, 'a', { line: 5, character: 0 })).toEqual({ Returns: { 'part lh': 'named', 'slot 1': 'given' } });
  expect(litBy(drawn, 'a', { line: 12, character: 8 })).toEqual({ Other: { 'part lh': 'given' } });
});

test('a cursor in another file lights up what draws on it', () => {
  expect(litBy(drawn, 'shop', { line: 9, character: 3 })).toEqual({ Returns: { 'slot 1': 'named' } });
  expect(drawsOn(drawn, 'shop')).toBe(true);
  expect(drawsOn(drawn, 'elsewhere')).toBe(false);
});

test.each([
  [{ line: 1, character: 7 }, true],
  [{ line: 1, character: 9 }, true],
  [{ line: 1, character: 6 }, false],
  [{ line: 1, character: 10 }, false],
  [{ line: 0, character: 8 }, false],
])('both ends of a place belong to it: %o', (at, inside) => {
  expect('Returns' in litBy(drawn, 'a', at)).toBe(inside);
});

test('a shape chosen again leads to each of its places in turn', () => {
  const turns = new Turns();
  expect([1, 2, 3, 4].map(() => turns.next('slot', 3))).toEqual([0, 1, 2, 0]);
  expect(turns.next('part', 2)).toBe(0);
  expect(turns.next('slot', 3)).toBe(0);
  turns.set('slot', 1);
  expect(turns.next('slot', 3)).toBe(2);
});
