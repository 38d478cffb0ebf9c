import { expect, test } from 'vitest';
import { type Place, refusalAt } from './refusal.js';

const disk: Place = { trusted: true, programs: true, scheme: 'file' };

test('a trusted folder on a disk has tasks', () => {
  expect(refusalAt(disk)).toBeUndefined();
});

test.each<[string, Partial<Place>, string]>([
  ['a folder that is not trusted', { trusted: false }, 'not trusted'],
  ['an editor in a browser', { programs: false }, 'in a browser'],
  ['a virtual folder', { scheme: 'memfs' }, 'on no disk'],
  ['a loose file', { scheme: undefined }, 'none of the folders'],
  [
    'a virtual folder that is not trusted, which trust alone would not help',
    { trusted: false, scheme: 'memfs' },
    'not trusted',
  ],
])('%s has none, and it is said why', (_, differs, why) => {
  expect(refusalAt({ ...disk, ...differs })).toContain(why);
});
