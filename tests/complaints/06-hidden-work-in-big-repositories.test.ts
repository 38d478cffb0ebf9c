import { afterEach, expect, test } from 'vitest';
import { lindwell, none, SHOP, some, stopAll, TOO_NEAR } from './lindwell.js';

afterEach(stopAll);

const CLOSED = Array.from({ length: 30 }, (_, i) => `closed${i}.joinery`);
const folder = {
  'shop.joinery': SHOP,
  'bases.joinery': TOO_NEAR,
  ...Object.fromEntries(CLOSED.map((name) => [name, TOO_NEAR])),
};

test('cabinets of files that are not open are worked out when that is asked for, and not before', async () => {
  const editor = await lindwell(folder);
  await editor.open('bases.joinery');
  await editor.until('bases.joinery', some);
  await editor.open('shop.joinery');
  await editor.type('shop.joinery', `${SHOP}\n`);
  await editor.until('shop.joinery', none);
  expect(CLOSED.filter((name) => editor.codes(name) !== undefined)).toEqual([]);

  const checked = await editor.connection.sendRequest('dryfit/checkWorkspace');
  expect(checked).toMatchObject({
    files: CLOSED.length + 2,
    errors: expect.toSatisfy((errors: number) => errors >= 31),
  });
  for (const name of CLOSED) expect(editor.codes(name)).toContain('slot-near-edge');
});

test('findings that were told of a closed file are taken back as soon as they no longer hold', async () => {
  const editor = await lindwell({
    'shop.joinery': SHOP.replace('slot to edge 10', 'slot to edge 10'),
    'closed.joinery': TOO_NEAR,
  });
  await editor.connection.sendRequest('dryfit/checkWorkspace');
  expect(editor.codes('closed.joinery')).toContain('slot-near-edge');
  editor.folder.write('closed.joinery', TOO_NEAR.replace('lines 60', 'lines 70'));
  await editor.watched({ 'closed.joinery': 'changed' });
  await editor.until('closed.joinery', none);
});

test('without joinery no cabinet is worked out, and the text is still checked', async () => {
  const editor = await lindwell(folder, {
    settings: { joinery: false },
    initializationOptions: { dryfit: { joinery: false } },
  });
  await editor.open('bases.joinery');
  await editor.until('bases.joinery', none);
  await editor.type('bases.joinery', TOO_NEAR.replace('of birch18', 'of birch81'));
  expect(await editor.until('bases.joinery', some)).toEqual(['unknown-name']);
  await editor.type('bases.joinery', TOO_NEAR);
  await editor.until('bases.joinery', none);
  await editor.set({ joinery: true });
  expect(await editor.until('bases.joinery', some)).toContain('slot-near-edge');
  await editor.set({ joinery: false });
  await editor.until('bases.joinery', none);
});
