import { existsSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { languageChecks } from './index.js';

const folder = new URL('.', import.meta.url);
const NO_CHECKS = ['index.ts', 'file-check.ts'];

test('every file of the folder is a check that is listed, in the order of names', () => {
  const files = readdirSync(folder)
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts') && !NO_CHECKS.includes(file))
    .map((file) => file.slice(0, -'.ts'.length))
    .sort();
  expect(languageChecks.map(({ code }) => code).sort()).toEqual(files);
});

test.each(languageChecks.map(({ code }) => code))('%s has a page', (code) => {
  expect(existsSync(new URL(`${code}.md`, folder))).toBe(true);
});
