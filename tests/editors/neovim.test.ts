import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { blocks } from '../readme/blocks.js';
import { EditorBench, wanted } from './bench.js';

const script = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const settings = blocks('lua');

let bench: EditorBench;
beforeEach(() => {
  bench = new EditorBench();
});
afterEach(() => bench.remove());

test('the README has settings for newer and for older ones', () => {
  expect(settings.map(({ before }) => before)).toEqual([
    expect.stringContaining('Neovim 0.11 or newer'),
    expect.stringContaining('An older Neovim'),
  ]);
});

test.each(settings)(
  'with the settings of the README it tells of a cabinet that cannot be made ($before)',
  ({ text }) => {
    const init = bench.write('init.lua', text);
    const before = ['--cmd', `luafile ${script('before-0.11.lua')}`];
    const told = bench.run('nvim', [
      '--headless',
      ...before,
      '-u',
      init,
      bench.file,
      '-c',
      `luafile ${script('ask.lua')}`,
    ]);
    expect(told.diagnostics).toEqual([{ line: wanted.line, message: expect.stringContaining(wanted.message) }]);
    expect(told.hover).toContain(wanted.hover);
    // A setting has reached the server: there are hints, and none of slots.
    expect(told.hints?.length).toBeGreaterThan(5);
    expect(told.hints?.filter((hint) => /slots/.test(hint))).toEqual([]);
  },
);

test('without that setting the hints tell of slots', () => {
  const init = bench.write('init.lua', (settings[1]?.text ?? '').replace('slotCounts = false', 'slotCounts = true'));
  const told = bench.run('nvim', ['--headless', '-u', init, bench.file, '-c', `luafile ${script('ask.lua')}`]);
  expect(told.hints?.filter((hint) => /slots/.test(hint)).length).toBeGreaterThan(0);
});
