import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findFiles } from './find.js';

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'dryfit-find-'));
  for (const folder of ['a/b', '.git', 'node_modules/x']) mkdirSync(join(root, folder), { recursive: true });
  for (const file of ['z.joinery', 'a/b/c.joinery', 'a/notes.txt', '.git/d.joinery', 'node_modules/x/e.joinery']) {
    writeFileSync(join(root, file), '');
  }
});

afterEach(() => {
  rmSync(root, { recursive: true, force: true });
});

const find = (...paths: string[]) => findFiles(paths, root).files.map((file) => file.slice(root.length + 1));

describe('finding files', () => {
  it('walks folders in order, past hidden ones and node_modules', () => {
    expect(find('.')).toEqual(['a/b/c.joinery', 'z.joinery']);
  });

  it('takes files as they are named, each once', () => {
    expect(find('z.joinery', 'z.joinery', '.', '.git/d.joinery')).toEqual([
      '.git/d.joinery',
      'a/b/c.joinery',
      'z.joinery',
    ]);
  });

  it('does not walk a loop of links, and follows links to files', () => {
    symlinkSync(root, join(root, 'a/loop'));
    symlinkSync(join(root, 'z.joinery'), join(root, 'a/linked.joinery'));
    symlinkSync(root, join(root, 'a/folder.joinery'));
    expect(find('.')).toEqual(['a/b/c.joinery', 'a/linked.joinery', 'z.joinery']);
  });

  it.each([
    ['missing.joinery', /cannot read missing\.joinery: no such file or folder/],
    ['a/notes.txt', /is not a \.joinery file/],
  ])('refuses %s', (path, message) => {
    expect(() => find(path)).toThrow(message);
  });

  it('says so when a folder holds no files, whatever other folders hold', () => {
    mkdirSync(join(root, 'empty'));
    expect(() => find('z.joinery', 'empty')).toThrow(/there are no \.joinery files in empty/);
  });

  it('takes a folder whose files were already named', () => {
    expect(find('a/b/c.joinery', 'a')).toEqual(['a/b/c.joinery']);
    expect(find('z.joinery', '.')).toContain('z.joinery');
  });

  it('is not taken in by a file whose folder begins with the same letters', () => {
    mkdirSync(join(root, 'sheet'));
    mkdirSync(join(root, 'sheets'));
    writeFileSync(join(root, 'sheets/d.joinery'), '');
    expect(() => find('sheets/d.joinery', 'sheet')).toThrow(/there are no \.joinery files in sheet/);
  });
});
