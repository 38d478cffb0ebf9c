import { afterEach, expect, test } from 'vitest';
import { lindwell, none, SHOP, some, stopAll, TOO_NEAR } from './lindwell.js';

afterEach(stopAll);

const texts = {
  'shop.joinery': SHOP,
  'reading-room/bases.joinery': TOO_NEAR.replace('"shop.joinery"', '"../shop.joinery"'),
};

test.each([[['', 'reading-room']], [['reading-room', '']], [['', '']]])(
  'a file that two folders hold is one file: %j',
  async (folders) => {
    const editor = await lindwell(texts, { folders });
    const checked = await editor.connection.sendRequest('dryfit/checkWorkspace');
    expect(checked).toMatchObject({ files: 2 });
    expect(editor.timesTold('reading-room/bases.joinery')).toBe(1);
    const found: { name: string }[] = await editor.connection.sendRequest('workspace/symbol', { query: 'Periodicals' });
    expect(found.filter(({ name }) => name === 'Periodicals')).toHaveLength(1);
  },
);

test('a change reaches it once', async () => {
  const editor = await lindwell(texts, { folders: ['', 'reading-room'] });
  const name = 'reading-room/bases.joinery';
  await editor.open(name);
  await editor.until(name, some);
  await editor.type(name, editor.folder.read(name).replace('lines 60', 'lines 70'));
  await editor.until(name, none);
  const times = editor.timesTold(name);
  await editor.type(name, editor.folder.read(name));
  await editor.until(name, some);
  expect(editor.timesTold(name)).toBe(times + 1);
});
