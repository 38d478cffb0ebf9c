import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Misuse } from '../io.js';
import { writeWhole } from './write.js';

let root: string;
const out = () => join(root, 'out');
const source = () => join(root, 'base.joinery');
const files = (...paths: string[]) => paths.map((path) => ({ path, text: `text of ${path}` }));
const tree = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'dryfit-write-'));
});

afterEach(() => {
  rmSync(root, { recursive: true, force: true });
});

describe('writing whole', () => {
  it('makes the folder, writes the files and a record of them, and nothing else', () => {
    expect(writeWhole(out(), source(), files('Base/parts.csv', 'Base/fit.json'))).toEqual({ written: 2, removed: 0 });
    expect(tree(root)).toEqual(['out/Base/fit.json', 'out/Base/parts.csv', 'out/dryfit-build.json']);
    expect(readFileSync(join(out(), 'Base/parts.csv'), 'utf8')).toBe('text of Base/parts.csv');
    expect(JSON.parse(readFileSync(join(out(), 'dryfit-build.json'), 'utf8')).sources).toEqual({
      '../base.joinery': ['Base/fit.json', 'Base/parts.csv'],
    });
  });

  it('replaces its own files, removes those it no longer makes, and leaves the files of others', () => {
    writeWhole(out(), source(), files('Base/parts.csv', 'Job/parts.csv'));
    writeFileSync(join(out(), 'Base/notes.txt'), 'mine');
    expect(writeWhole(out(), source(), [{ path: 'Base/parts.csv', text: 'new' }])).toEqual({ written: 1, removed: 1 });
    expect(tree(out())).toEqual(['Base/notes.txt', 'Base/parts.csv', 'dryfit-build.json']);
    expect(existsSync(join(out(), 'Job'))).toBe(false);
    expect(readFileSync(join(out(), 'Base/parts.csv'), 'utf8')).toBe('new');
  });

  it('leaves everything as it was when one file cannot be put in its place', () => {
    writeWhole(out(), source(), files('Base/parts.csv', 'Base/slots.csv'));
    mkdirSync(join(out(), 'Job'));
    mkdirSync(join(out(), 'Job/parts.csv'));
    const changed = ['Base/parts.csv', 'Base/slots.csv', 'Job/parts.csv'].map((path) => ({ path, text: 'new' }));
    expect(() => writeWhole(out(), source(), changed)).toThrow(/Job\/parts\.csv in --out is not a file/);
    expect(tree(out())).toEqual(['Base/parts.csv', 'Base/slots.csv', 'dryfit-build.json']);
    expect(readFileSync(join(out(), 'Base/parts.csv'), 'utf8')).toBe('text of Base/parts.csv');
  });

  it('takes back what it has moved when a later move fails', () => {
    writeWhole(out(), source(), files('Base/parts.csv'));
    // The third fails when it is moved, because the second has become a file where it needs a folder.
    const paths = ['Base/parts.csv', 'New/parts.csv', 'New/parts.csv/slots.csv'];
    const changed = paths.map((path) => ({ path, text: 'new' }));
    expect(() => writeWhole(out(), source(), changed)).toThrow(/nothing was written.*not a folder/s);
    expect(tree(out())).toEqual(['Base/parts.csv', 'dryfit-build.json']);
    expect(readdirSync(out()).sort()).toEqual(['Base', 'dryfit-build.json']);
    expect(readFileSync(join(out(), 'Base/parts.csv'), 'utf8')).toBe('text of Base/parts.csv');
  });

  it('removes the folders it made when nothing can be written', () => {
    const deep = join(root, 'a/b/out');
    expect(() => writeWhole(deep, source(), files('../escape.csv'))).toThrow(Misuse);
    expect(readdirSync(root)).toEqual([]);
  });

  it.each(['../parts.csv', 'Base/../../parts.csv', '/parts.csv', 'Base//parts.csv', './parts.csv'])(
    'refuses %s',
    (path) => {
      expect(() => writeWhole(out(), source(), files(path))).toThrow(/leads out of --out/);
      expect(existsSync(join(root, 'parts.csv'))).toBe(false);
    },
  );

  it('refuses a link below the folder, to a folder or to a file', () => {
    const elsewhere = join(root, 'elsewhere');
    mkdirSync(elsewhere);
    mkdirSync(out());
    symlinkSync(elsewhere, join(out(), 'Base'));
    expect(() => writeWhole(out(), source(), files('Base/parts.csv'))).toThrow(/Base in --out is a link/);
    mkdirSync(join(out(), 'Top'));
    symlinkSync(join(elsewhere, 'parts.csv'), join(out(), 'Top/parts.csv'));
    expect(() => writeWhole(out(), source(), files('Top/parts.csv'))).toThrow(/Top\/parts\.csv in --out is a link/);
    expect(readdirSync(elsewhere)).toEqual([]);
  });

  it('takes a link as the folder itself, since that is what was asked for', () => {
    mkdirSync(join(root, 'real'));
    symlinkSync(join(root, 'real'), out());
    writeWhole(out(), source(), files('Base/parts.csv'));
    expect(tree(join(root, 'real'))).toEqual(['Base/parts.csv', 'dryfit-build.json']);
  });

  it('refuses to replace what another source made', () => {
    writeWhole(out(), source(), files('Base/parts.csv'));
    expect(() => writeWhole(out(), join(root, 'other.joinery'), files('base/parts.csv'))).toThrow(
      /Base\/parts\.csv was built from \.\.\/base\.joinery/,
    );
    writeWhole(out(), join(root, 'other.joinery'), files('Other/parts.csv'));
    expect(writeWhole(out(), source(), files('Base/parts.csv'))).toEqual({ written: 1, removed: 0 });
  });

  it('removes nothing a tampered record names outside of its own kind', () => {
    const victim = join(root, 'victim.csv');
    writeFileSync(victim, 'keep');
    mkdirSync(out());
    const sources = {
      '../base.joinery': ['../victim.csv', 'Base/../../victim.csv', '/etc/x.csv', 'dryfit-build.json', 7],
    };
    writeFileSync(join(out(), 'dryfit-build.json'), JSON.stringify({ format: 'dryfit-build', version: 1, sources }));
    expect(writeWhole(out(), source(), files('Base/parts.csv')).removed).toBe(0);
    expect(readFileSync(victim, 'utf8')).toBe('keep');
  });

  it('says so when a file stands where the folder should be', () => {
    writeFileSync(out(), '');
    expect(() => writeWhole(out(), source(), files('Base/parts.csv'))).toThrow(/cannot make the folder .*in the way/);
  });

  it.runIf(existsSync('/proc/self'))('comes to an end where a file system takes no folders', () => {
    expect(() => writeWhole('/proc/dryfit/below', source(), files('Base/parts.csv'))).toThrow(
      /cannot make the folder \/proc\/dryfit\/below: no such file or folder/,
    );
  });

  it('takes a link that leads nowhere for what is in the way', () => {
    symlinkSync(join(root, 'nowhere'), out());
    expect(() => writeWhole(out(), source(), files('Base/parts.csv'))).toThrow(/cannot make the folder/);
    expect(readdirSync(root)).toEqual(['out']);
  });

  it('says so when the folder cannot be made', () => {
    writeFileSync(out(), '');
    expect(() => writeWhole(join(out(), 'below'), source(), files('Base/parts.csv'))).toThrow(
      /a part of the path is not a folder/,
    );
  });
});
