import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ALONE } from '../../.config/vitest.config.js';
import { codeOf, root } from './sources.js';

/** Words by which a test changes what others of its process use as well. */
const CHANGES =
  /\bvi\s*\.(?:mock|doMock|stub\w+|useFakeTimers|setSystemTime)\b|\bspyOn\(\s*(?:\w+\.prototype|globalThis|console|process)\b/;

test('what shares a process with other tests changes nothing that is theirs too', () => {
  const files = ['engine', 'language', 'output'].flatMap((name) => {
    const folder = join('packages', name, 'src');
    return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.test.ts') || path.endsWith('.fixture.ts'))
      .map((path) => join(folder, path).replaceAll('\\', '/'));
  });
  expect(files.length).toBeGreaterThan(100);
  const changing = files.filter((path) => CHANGES.test(codeOf(readFileSync(join(root, path), 'utf8'))));
  expect(changing.sort()).toEqual([...ALONE].sort());
});
