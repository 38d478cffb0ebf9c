import { describe, expect, it } from 'vitest';
import { folderName, folderNames } from './names.js';

describe('a folder name', () => {
  it.each([
    ['Periodicals (wide 450, deep 320)', 'Periodicals-wide-450-deep-320'],
    ['job Library', 'job-Library'],
    ['Bücherregal', 'Bücherregal'],
    ['u\u0308', 'ü'],
    ['..', 'unnamed'],
    ['../../etc', 'etc'],
    ['a/../../b', 'a-.-.-b'],
    ['a\\b:c*d', 'a-b-c-d'],
    ['C:\\Windows', 'C-Windows'],
    ['.hidden', 'hidden'],
    ['tail.', 'tail'],
    ['wide 17.7', 'wide-17.7'],
    ['nul', '_nul'],
    ['COM1.txt', '_COM1.txt'],
    ['\u0000', 'unnamed'],
    ['', 'unnamed'],
  ])('made of %j', (words, name) => {
    expect(folderName(words)).toBe(name);
  });

  it('is never too long', () => {
    expect(folderName('x'.repeat(500))).toHaveLength(80);
  });

  it('is numbered where another is the same but for case', () => {
    expect(folderNames(['Base', 'base', 'Base!', 'Top'])).toEqual(['Base', 'base-2', 'Base-3', 'Top']);
  });
});
