import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { URI } from 'langium';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { Unreadable } from '../workspace/readable.js';
import { TextFiles } from './text-files.js';

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'dryfit-server-'));
});

afterEach(() => {
  rmSync(root, { recursive: true, force: true });
});

const read = (name: string): Promise<string> => new TextFiles().readFile(URI.file(join(root, name)));

test('UTF-8 text is read, without a byte order mark', async () => {
  writeFileSync(join(root, 'a #1 %41 ü.joinery'), '\uFEFFpart tür ½');
  expect(await read('a #1 %41 ü.joinery')).toBe('part tür ½');
});

test('what is no such text is refused with the reason, and a pipe is not waited for', async () => {
  writeFileSync(join(root, 'latin.joinery'), Uint8Array.of(112, 0xfc, 114));
  writeFileSync(join(root, 'large.joinery'), '');
  truncateSync(join(root, 'large.joinery'), 9 * 1024 ** 2);
  execFileSync('mkfifo', [join(root, 'pipe.joinery')]);
  await expect(read('latin.joinery')).rejects.toThrow(/not UTF-8 text/);
  await expect(read('large.joinery')).rejects.toThrow(/9 MiB large, and the most is 8/);
  await expect(read('pipe.joinery')).rejects.toThrow(/not a regular file/);
  await expect(read('pipe.joinery')).rejects.toThrow(Unreadable);
  await expect(read('missing.joinery')).rejects.not.toThrow(Unreadable);
});
