import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { root } from './sources.js';

const vitest = join(root, 'node_modules/vitest/vitest.mjs');
let folder = '';
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Runs two scenarios, one of them passed over or not, against a list, as the workbench's are run. */
function runAgainst(list: readonly string[], second = 'test') {
  folder = mkdtempSync(join(tmpdir(), 'dryfit-scenarios-'));
  const reporter = [join(root, '.config/scenario-reporter.ts'), { list: join(folder, 'list.txt') }];
  const config = { test: { globals: true, include: ['*.test.mjs'], reporters: [reporter] } };
  writeFileSync(join(folder, 'list.txt'), `# Scenarios.\n${list.join('\n')}\n`);
  writeFileSync(join(folder, 'vitest.config.mjs'), `export default ${JSON.stringify(config)};\n`);
  writeFileSync(join(folder, 'a.test.mjs'), `test('opens', () => {});\n${second}('shuts', () => {});\n`);
  const { status, stdout } = spawnSync(process.execPath, [vitest, 'run', '--root', folder], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { status, said: stdout.trim().split('\n') };
}

test('all of the list, and nothing else, passes', () => {
  expect(runAgainst(['opens', 'shuts'])).toEqual({ status: 0, said: ['2 scenarios ran, 2 are listed'] });
});

test.each([
  ['one that is listed and not there', ['opens', 'shuts', 'locks'], 'test', 'did not run: locks'],
  ['one that is passed over', ['opens', 'shuts'], 'test.skip', 'did not run: shuts'],
  ['one that is not listed', ['opens'], 'test', 'ran, but is not listed: shuts'],
])('%s fails the run', (_, list, second, said) => {
  const outcome = runAgainst(list, second);
  expect(outcome.status).toBe(1);
  expect(outcome.said).toContain(said);
});

test('the list of the workbench holds no name twice and none that a version of Node changes', () => {
  const names = readFileSync(join(root, 'tests/workbench/scenarios.txt'), 'utf8').split('\n').filter(Boolean);
  expect(new Set(names).size).toBe(names.length);
  expect(names.filter((name) => /v?\d+\.\d+\.\d+/.test(name))).toEqual([]);
});
