import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { blocks } from '../readme/blocks.js';
import { EditorBench, wanted } from './bench.js';

const ask = fileURLToPath(new URL('ask.el', import.meta.url));
let bench: EditorBench;
beforeEach(() => {
  bench = new EditorBench();
});
afterEach(() => bench.remove());

test('with the settings of the README it tells of a cabinet that cannot be made', () => {
  const [settings, ...more] = blocks('elisp');
  expect(more).toEqual([]);
  const init = bench.write('init.el', settings?.text ?? '');
  const opened = `(setenv "FILE" ${JSON.stringify(bench.file)})`;
  const told = bench.run('emacs', [
    '--batch',
    '--eval',
    '(package-initialize)',
    '-l',
    init,
    '--eval',
    opened,
    '-l',
    ask,
  ]);
  expect(told.diagnostics).toEqual([{ line: wanted.line, message: expect.stringContaining(wanted.message) }]);
  expect(told.hover).toContain(wanted.hover);
});
