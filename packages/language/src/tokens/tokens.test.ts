import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../testing/files.fixture.js';
import { tokensOf } from './tokens.js';

/** Words of a text with what they are, those that `which` names. */
async function tokens(text: string, ...which: readonly string[]): Promise<string[]> {
  const { value } = (await new FilesInMemory({ 'desk.joinery': text }).open('desk.joinery')).parseResult;
  return [...tokensOf(value)]
    .map(({ start, end, type, modifiers }) => [text.slice(start, end), type, ...modifiers].join(' '))
    .filter((line) => which.length === 0 || which.includes(line.split(' ')[0] ?? ''));
}

const TEXT = `import "dryfit:connectors"
material birch { thickness 18 }
pattern width { lines 70 }
cabinet A {
  parameter depth = 300
  part top, base : level of birch
  part in : upright of birch
  connect biscuit20 by width
  depth depth of base
  top.top against base.bottom
  butt top between in and base { flush top, rear  allow thin-wall "so it is" }
}
job J { 2 of A(depth = 250) }
`;

describe('what words are', () => {
  test('a part called as a side is a part, and the side is a word', async () => {
    expect(await tokens(TEXT, 'top')).toEqual([
      'top variable declaration',
      'top variable',
      'top keyword',
      'top variable',
      'top keyword',
    ]);
  });

  test('a parameter and a pattern called as words are what they are', async () => {
    expect(await tokens(TEXT, 'depth')).toEqual([
      'depth parameter declaration',
      'depth keyword',
      'depth parameter',
      'depth parameter',
    ]);
    expect(await tokens(TEXT, 'width', 'in')).toEqual([
      'width enum declaration',
      'in variable declaration',
      'width enum',
      'in variable',
    ]);
  });

  test('what comes from the built-in library is told', async () => {
    expect(await tokens(TEXT, 'biscuit20', 'birch')).toEqual([
      'birch type declaration',
      'birch type',
      'birch type',
      'biscuit20 struct defaultLibrary',
    ]);
  });

  test('cabinets, jobs, checks, numbers and texts', async () => {
    expect(await tokens(TEXT, 'A', 'J', 'thin', 'wall', '70', '"so')).toEqual([
      '70 number',
      'A class declaration',
      'thin decorator',
      'wall decorator',
      '"so it is" string',
      'J function declaration',
      'A class',
    ]);
  });

  test('names of nothing are left alone, and comments go line by line', async () => {
    expect(await tokens('cabinet A { part a : level of nothing }', 'nothing')).toEqual([]);
    expect(await tokens('/* one\n  two */ units mm // three')).toEqual([
      '/* one comment',
      '  two */ comment',
      'units keyword',
      'mm keyword',
      '// three comment',
    ]);
  });

  test('tokens come in order and do not overlap; those of a stretch are those of the whole that it touches', async () => {
    const { value } = (await new FilesInMemory({ 'desk.joinery': TEXT }).open('desk.joinery')).parseResult;
    const all = [...tokensOf(value)];
    all.forEach(({ start }, index) => void expect(start).toBeGreaterThanOrEqual(all[index - 1]?.end ?? 0));
    for (let at = 0; at < TEXT.length; at += 37) {
      const within = { start: at, end: at + 60 };
      const touched = all.filter(({ start, end }) => start <= within.end && end >= within.start);
      expect([...tokensOf(value, within)]).toEqual(touched);
    }
  });
});
