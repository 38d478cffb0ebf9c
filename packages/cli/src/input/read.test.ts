import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Misuse } from '../io.js';
import { readText } from './read.js';

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'dryfit-read-'));
});

afterEach(() => {
  rmSync(root, { recursive: true, force: true });
});

function read(content?: string | Uint8Array, name = 'a.joinery'): string {
  const file = join(root, name);
  if (content !== undefined) writeFileSync(file, content);
  return readText(file, name);
}

describe('reading a file', () => {
  it('gives UTF-8 text, without a byte order mark', () => {
    expect(read('\uFEFFpart tür ½')).toBe('part tür ½');
  });

  it.each([
    ['zero bytes', Uint8Array.of(112, 0, 114), /a\.joinery: it is not a text file/],
    ['another encoding', Uint8Array.of(112, 0xfc, 114), /not UTF-8 text; save it as UTF-8/],
    ['nothing at all', undefined, /no such file or folder/],
  ])('refuses %s', (_, content, message) => {
    expect(() => read(content)).toThrow(message);
    expect(() => read(content)).toThrow(Misuse);
  });

  it('refuses a file far larger than any cabinet, without reading it', () => {
    writeFileSync(join(root, 'a.joinery'), '');
    truncateSync(join(root, 'a.joinery'), 3 * 1024 ** 3);
    expect(() => read()).toThrow(/it is 3072 MiB large, and the most is 8/);
  });

  it('refuses a folder, a ring of links and a pipe that nobody writes to', () => {
    expect(() => readText(root, 'folder')).toThrow(/not a regular file/);
    symlinkSync(join(root, 'b'), join(root, 'a'));
    symlinkSync(join(root, 'a'), join(root, 'b'));
    expect(() => readText(join(root, 'a'), 'a')).toThrow(/round in a circle/);
    execFileSync('mkfifo', [join(root, 'pipe.joinery')]);
    expect(() => readText(join(root, 'pipe.joinery'), 'pipe.joinery')).toThrow(/not a regular file/);
  });
});
