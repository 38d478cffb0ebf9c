import { afterEach, expect, test } from 'vitest';
import { BASES, lindwell, none, SHOP, SHOP_TOO_NEAR, some, stopAll } from './lindwell.js';

afterEach(stopAll);

test('a shop never shows what is wrong with the cabinets that draw on it', async () => {
  const editor = await lindwell({ 'shop.joinery': SHOP, 'bases.joinery': BASES });
  await editor.open('bases.joinery');
  await editor.open('shop.joinery');
  await editor.until('bases.joinery', none);
  await editor.until('shop.joinery', none);
  await editor.type('shop.joinery', SHOP_TOO_NEAR);
  expect(await editor.until('bases.joinery', some)).toContain('slot-near-edge');
  expect(editor.codes('shop.joinery')).toEqual([]);
});

test('any file is checked on its own account, whichever was opened first', async () => {
  const chain = { 'shop.joinery': SHOP_TOO_NEAR, 'bases.joinery': BASES, 'job.joinery': 'import "bases.joinery"\n' };
  const editor = await lindwell(chain);
  await editor.open('job.joinery');
  await editor.open('shop.joinery');
  await editor.until('job.joinery', none);
  await editor.until('shop.joinery', none);
  await editor.open('bases.joinery');
  expect(await editor.until('bases.joinery', some)).toContain('slot-near-edge');
  expect([editor.codes('job.joinery'), editor.codes('shop.joinery')]).toEqual([[], []]);
});
