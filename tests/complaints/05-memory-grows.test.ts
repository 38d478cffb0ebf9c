import { expect, test } from 'vitest';
import { FilesInMemory } from '../../packages/language/src/testing/files.fixture.js';
import { BASES, SHOP } from './lindwell.js';

test('what is kept of cabinets does not grow with the keys that are pressed', async () => {
  const memory = new FilesInMemory({ 'shop.joinery': SHOP, 'bases.joinery': BASES });
  const held: { cabinets: number; variants: number }[] = [];
  for (let key = 0; key < 400; key++) {
    await memory.write(
      'bases.joinery',
      BASES.replace('deep = 320', `deep = ${320 + key / 10}`).replace('Periodicals {', `Periodicals {  // ${key}`),
    );
    await memory.examine('bases.joinery');
    held.push(memory.services.joinery.joinery.Fits.held);
  }
  expect(new Set(held.map(({ cabinets }) => cabinets))).toEqual(new Set([1]));
  expect(Math.max(...held.map(({ variants }) => variants))).toBeLessThanOrEqual(64);
  expect(held.at(-1)).toEqual(held[0]);
});

test('nothing is kept of a file that is gone', async () => {
  const texts = { 'shop.joinery': SHOP, 'bases.joinery': BASES };
  const memory = new FilesInMemory(texts);
  await memory.examine('bases.joinery');
  const before = memory.services.joinery.joinery.Fits.held;
  for (let file = 0; file < 50; file++) {
    await memory.write(`copy${file}.joinery`, BASES);
    await memory.examine(`copy${file}.joinery`);
  }
  expect(memory.services.joinery.joinery.Fits.held.cabinets).toBe(before.cabinets + 50);
  for (let file = 0; file < 50; file++) await memory.write(`copy${file}.joinery`, undefined);
  expect(memory.services.joinery.joinery.Fits.held).toEqual(before);
});
