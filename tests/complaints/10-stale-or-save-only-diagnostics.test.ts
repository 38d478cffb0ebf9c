import { afterEach, describe, expect, test } from 'vitest';
import { BASES, lindwell, none, SHOP, SHOP_TOO_NEAR, some, stopAll, TOO_NEAR } from './lindwell.js';

afterEach(stopAll);

const CHAIN = {
  'shop.joinery': SHOP,
  'stock.joinery': 'import "shop.joinery"\n',
  'bases.joinery': BASES.replace('"shop.joinery"', '"stock.joinery"'),
};
const near = (codes: readonly string[]) => codes.includes('slot-near-edge');

describe('what is told of an open file is of the texts as they are', () => {
  test('typed and not saved, however many imports away', async () => {
    const editor = await lindwell(CHAIN);
    await editor.open('bases.joinery');
    await editor.until('bases.joinery', none);
    await editor.open('shop.joinery');
    await editor.type('shop.joinery', SHOP_TOO_NEAR);
    await editor.until('bases.joinery', near);
    await editor.type('shop.joinery', SHOP);
    await editor.until('bases.joinery', none);
  });

  test('closed without saving, the file on disk counts', async () => {
    const editor = await lindwell(CHAIN);
    await editor.open('bases.joinery');
    await editor.open('shop.joinery', SHOP_TOO_NEAR);
    await editor.until('bases.joinery', near);
    await editor.close('shop.joinery');
    await editor.until('bases.joinery', none);
  });

  test('changed on disk by another program', async () => {
    const editor = await lindwell(CHAIN);
    await editor.open('bases.joinery');
    await editor.until('bases.joinery', none);
    editor.folder.write('shop.joinery', SHOP_TOO_NEAR);
    await editor.watched({ 'shop.joinery': 'changed' });
    await editor.until('bases.joinery', near);
  });

  test('an import that is deleted, renamed, and there again', async () => {
    const editor = await lindwell(CHAIN);
    await editor.open('bases.joinery');
    await editor.until('bases.joinery', none);
    editor.folder.delete('stock.joinery');
    await editor.watched({ 'stock.joinery': 'deleted' });
    expect(await editor.until('bases.joinery', some)).toContain('missing-import');
    editor.folder.write('store.joinery', CHAIN['stock.joinery']);
    await editor.watched({ 'store.joinery': 'created' });
    await editor.type('bases.joinery', CHAIN['bases.joinery'].replace('stock.joinery', 'store.joinery'));
    await editor.until('bases.joinery', none);
  });

  test('a file deleted on disk and open is what the editor holds, until it is closed', async () => {
    const editor = await lindwell(CHAIN);
    await editor.open('bases.joinery');
    await editor.open('shop.joinery', SHOP_TOO_NEAR);
    await editor.until('bases.joinery', near);
    editor.folder.delete('shop.joinery');
    await editor.watched({ 'shop.joinery': 'deleted' });
    await editor.type('shop.joinery', SHOP);
    await editor.until('bases.joinery', none);
    await editor.close('shop.joinery');
    await editor.open('stock.joinery');
    expect(await editor.until('stock.joinery', some)).toEqual(['missing-import']);
  });

  test('a folder that is deleted takes the findings of its files along, but not those of open ones', async () => {
    const editor = await lindwell({ ...CHAIN, 'old/a.joinery': TOO_NEAR, 'old/b.joinery': TOO_NEAR });
    await editor.connection.sendRequest('dryfit/checkWorkspace');
    expect(editor.codes('old/a.joinery')?.length).toBeGreaterThan(0);
    await editor.open('old/b.joinery');
    editor.folder.delete('old');
    await editor.watched({ old: 'deleted' });
    await editor.until('old/a.joinery', none);
    await editor.type('old/b.joinery', `${TOO_NEAR}\ncabinet {`);
    expect(await editor.until('old/b.joinery', (codes) => codes.includes('syntax'))).toContain('missing-import');
  });
});

test('a change of a setting reaches what a check of the whole folder told of closed files', async () => {
  const editor = await lindwell({ ...CHAIN, 'bases.joinery': TOO_NEAR });
  await editor.connection.sendRequest('dryfit/checkWorkspace');
  await editor.until('bases.joinery', near);
  await editor.connection.sendNotification('workspace/didChangeConfiguration', {
    settings: { dryfit: { joinery: false } },
  });
  await editor.until('bases.joinery', (codes) => !near(codes));
});

test('a file that is closed has no findings told any more', async () => {
  const editor = await lindwell({ ...CHAIN, 'bases.joinery': TOO_NEAR });
  await editor.open('bases.joinery');
  await editor.until('bases.joinery', near);
  await editor.close('bases.joinery');
  await editor.until('bases.joinery', none);
});

test('a single file without a folder works, with what it imports', async () => {
  const editor = await lindwell({ 'shop.joinery': SHOP, 'bases.joinery': TOO_NEAR }, { folders: [] });
  await editor.open('bases.joinery');
  expect(await editor.until('bases.joinery', some)).toEqual(
    expect.not.arrayContaining(['missing-import', 'unknown-name']),
  );
  await editor.type('bases.joinery', BASES);
  await editor.until('bases.joinery', none);
});
