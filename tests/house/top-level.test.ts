import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root } from './sources.js';

const agreed = [
  ...['packages', 'syntaxes', 'examples', 'tests'],
  ...['package.json', 'package-lock.json', 'tsconfig.json', 'langium-config.json'],
  ...['README.md', 'DEVELOPERS.md', 'LICENSE'],
];

test('the top level holds the agreed entries and dotfiles only', () => {
  const strangers = topLevel().filter((name) => !name.startsWith('.') && !agreed.includes(name));
  expect(strangers).toEqual([]);
});

test.each(agreed)('%s stands at the top level', (name) => {
  expect(existsSync(join(root, name))).toBe(true);
});

/** Names at the top level that git does not ignore; without git (an unpacked archive), all but what npm installs. */
function topLevel(): string[] {
  if (!existsSync(join(root, '.git'))) return readdirSync(root).filter((name) => name !== 'node_modules');
  const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  return [...new Set(listed.split('\n').map((path) => path.split('/')[0] ?? ''))].filter((name) => name !== '');
}
