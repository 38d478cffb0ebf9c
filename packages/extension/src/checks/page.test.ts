import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { pageName } from './page-name.js';
import { pageText } from './page-text.js';

const pages = ['engine', 'language'].flatMap((name) => {
  const folder = fileURLToPath(new URL(`../../../${name}/src/checks/`, import.meta.url));
  return readdirSync(folder)
    .filter((file) => file.endsWith('.md'))
    .map((file) => [file, readFileSync(folder + file, 'utf8')] as const);
});

describe.each(pages)('%s', (file, page) => {
  test('is found by its address', () => expect(pageName(`/${file}`)).toBe(file));

  test('says of each example what it is', () => {
    const fences = page.match(/^```joinery \w+/gm) ?? [];
    const shown = pageText(page);
    expect(shown.match(/^\*\*This (?:fails|passes)\b.*:\*\*$/gm) ?? []).toHaveLength(fences.length);
    expect(shown).not.toMatch(/^```joinery \w/m);
  });
});

test('most pages have examples', () => {
  const without = pages.filter(([, page]) => !/^```joinery \w/m.test(page)).map(([file]) => file);
  expect(without).toEqual(['check-failed.md']);
});

test.each(['/../../secrets.md', '/%2e%2e/x.md', '/a/b.md', '/.md', '/slot.txt', '', '/'])('%s is no page', (path) => {
  expect(pageName(path)).toBeUndefined();
});
