import { describe, expect, test } from 'vitest';
import { isCabinet, isPartLine } from '../generated/ast.js';
import { FilesInMemory, told } from '../testing/files.fixture.js';

const rack = (material: string) => `cabinet Rack { part a : upright of ${material} }`;
const sheet = (name: string, thickness = 18) => `material ${name} { thickness ${thickness} }`;

/** Findings about names and imports, with what they point at. */
async function names(files: Record<string, string>, path: string): Promise<readonly string[]> {
  const { findings } = await new FilesInMemory(files).examine(path);
  const codes = ['unknown-name', 'missing-import', 'import-clash', 'duplicate-name'];
  return told(
    findings.filter(({ code }) => codes.includes(code)),
    files[path] ?? '',
  );
}

/** The thickness that a cabinet's one part is worked out with. */
async function thickness(files: Record<string, string>, path: string): Promise<string> {
  const { cabinets } = await new FilesInMemory(files).examine(path);
  const spec = cabinets[0]?.spec;
  return `${spec?.shop.materials.get(spec.parts[0]?.material ?? '')?.thickness.value}`;
}

describe('imports', () => {
  test('a file sees its own entries, what it imports, and what that imports', async () => {
    const files = {
      'a.joinery': `import "b.joinery"\n${rack('ply')}`,
      'b.joinery': 'import "c/d.joinery"',
      'c/d.joinery': sheet('ply'),
    };
    expect(await names(files, 'a.joinery')).toEqual([]);
    expect(await thickness(files, 'a.joinery')).toBe('18');
  });

  test('a file sees nothing that it does not import', async () => {
    const files = { 'a.joinery': rack('ply'), 'b.joinery': sheet('ply') };
    const memory = new FilesInMemory(files);
    await memory.open('b.joinery');
    const { findings } = await memory.examine('a.joinery');
    expect(findings.map(({ code }) => code)).toContain('unknown-name');
  });

  test('paths go up and down from the folder of the file', async () => {
    const files = { 'x/y/a.joinery': `import "../../b.joinery"\n${rack('ply')}`, 'b.joinery': sheet('ply') };
    expect(await names(files, 'x/y/a.joinery')).toEqual([]);
  });

  test('files may import each other', async () => {
    const files = {
      'a.joinery': `import "b.joinery"\n${rack('ply')}`,
      'b.joinery': `import "a.joinery"\n${sheet('ply')}`,
    };
    expect(await names(files, 'a.joinery')).toEqual([]);
  });

  test('a file that is not there is one finding, and what is missing because of it is none', async () => {
    expect(await names({ 'a.joinery': `import "shop"\n${rack('ply')}` }, 'a.joinery')).toEqual([
      'missing-import `"shop"`: shop cannot be read: there is no such file beside this one',
    ]);
  });

  test('the nearer definition hides the farther one', async () => {
    const files = {
      'a.joinery': `import "b.joinery"\n${sheet('ply', 12)}\n${rack('ply')}`,
      'b.joinery': sheet('ply'),
      'c.joinery': `import "b.joinery"\nimport "d.joinery"\n${rack('ply')}`,
      'd.joinery': sheet('ply', 21),
    };
    expect(await thickness(files, 'a.joinery')).toBe('12');
    expect(await names(files, 'a.joinery')).toEqual([]);
    expect(await thickness(files, 'c.joinery')).toBe('18');
    expect(await names(files, 'c.joinery')).toEqual([
      'import-clash `"d.joinery"`: ply of b.joinery and of d.joinery are both imported; the first is taken',
    ]);
  });

  test('the built-in library needs no file system, and gives way to what is written', async () => {
    const library = 'import "dryfit:sheets"\n';
    expect(await thickness({ 'a.joinery': library + rack('plywood18') }, 'a.joinery')).toBe('18');
    const own = `${library}${sheet('plywood18', 17)}\n${rack('plywood18')}`;
    expect(await thickness({ 'a.joinery': own }, 'a.joinery')).toBe('17');
    expect(await names({ 'a.joinery': own }, 'a.joinery')).toEqual([]);
  });

  test('the library is named where it has what is missing', async () => {
    const { findings } = await new FilesInMemory({ 'a.joinery': rack('plywood18') }).examine('a.joinery');
    expect(findings.find(({ code }) => code === 'unknown-name')?.cure.join('')).toBe(
      'It is in the built-in library: write import "dryfit:sheets".',
    );
  });
});

describe('names', () => {
  test('parts and parameters are those of their own cabinet', async () => {
    const text = [
      sheet('ply'),
      'cabinet One { parameter wide = 600  part a, b : upright of ply  width wide over a and b }',
      'cabinet Two { part c, d : upright of ply  width wide over a and c }',
    ].join('\n');
    expect(await names({ 'a.joinery': text }, 'a.joinery')).toEqual([
      'unknown-name `wide`: there is no parameter called wide in Two',
      'unknown-name `a`: there is no part called a in Two',
    ]);
  });

  test('a job gives values to the parameters of its cabinet', async () => {
    const text = [
      sheet('ply'),
      'cabinet One { parameter wide = 600  part a, b : upright of ply  width wide over a and b }',
      'job Library { 1 of One(wide = 500)\n 1 of One(wid = 500)\n 1 of Won }',
    ].join('\n');
    expect(await names({ 'a.joinery': text }, 'a.joinery')).toEqual([
      'unknown-name `wid`: there is no parameter called wid in One',
      'unknown-name `Won`: there is no cabinet called Won in this file or in what it imports',
    ]);
  });

  test('kinds of things have names of their own, and one name twice in a kind is found', async () => {
    const text = `${sheet('x')}\npattern x { lines 70 }\n${sheet('x', 12)}\n${rack('x')}\njig a { bed 9 }\njig b { bed 8 }`;
    expect(await names({ 'a.joinery': text }, 'a.joinery')).toEqual([
      'duplicate-name `x`: there is a material called x already',
      'duplicate-name `jig`: a file describes one jig, and this is another',
    ]);
  });

  test('a name that was mistyped is guessed', async () => {
    const { findings } = await new FilesInMemory({ 'a.joinery': `${sheet('birch18')}\n${rack('brich18')}` }).examine(
      'a.joinery',
    );
    expect(findings.find(({ code }) => code === 'unknown-name')?.cure.join('')).toBe('Did you mean birch18?');
  });

  test('a name used in several places is one finding with all of them', async () => {
    const text = `${sheet('ply')}\ncabinet A { part a : upright of ply  width 3 of b  height 3 of b }`;
    const { findings } = await new FilesInMemory({ 'a.joinery': text }).examine('a.joinery');
    expect(findings.filter(({ code }) => code === 'unknown-name').map(({ related }) => related.length)).toEqual([1]);
  });
});

describe('changes reach every file that depends on them', () => {
  const chain = {
    'a.joinery': `import "b.joinery"\n${rack('ply')}`,
    'b.joinery': 'import "c.joinery"',
    'c.joinery': sheet('ply'),
  };
  const sizeOf = (memory: FilesInMemory) => {
    const file = memory.document('a.joinery')?.parseResult.value;
    const cabinet = file?.entries.find(isCabinet);
    const line = cabinet?.items.find(isPartLine);
    const fit = cabinet && memory.services.joinery.joinery.Fits.of(cabinet).result.fit;
    return line?.material.ref ? `${fit?.parts[0]?.extent.x}` : 'unknown';
  };
  const codes = (memory: FilesInMemory, path = 'a.joinery') => memory.found(path).map(({ code }) => code);

  test('through a file between', async () => {
    const memory = new FilesInMemory(chain);
    await memory.open('a.joinery');
    expect(sizeOf(memory)).toBe('18');
    await memory.write('c.joinery', sheet('ply', 21));
    expect(sizeOf(memory)).toBe('21');
    await memory.write('c.joinery', sheet('pine'));
    expect(codes(memory)).toContain('unknown-name');
    await memory.write('c.joinery', sheet('ply', 15));
    expect(sizeOf(memory)).toBe('15');
    expect(codes(memory)).not.toContain('unknown-name');
  });

  test('when a file goes and comes back', async () => {
    const memory = new FilesInMemory(chain);
    await memory.open('a.joinery');
    await memory.write('c.joinery', undefined);
    expect(codes(memory, 'b.joinery')).toEqual(['missing-import']);
    await memory.write('c.joinery', sheet('ply', 9));
    expect(sizeOf(memory)).toBe('9');
    expect(codes(memory, 'b.joinery')).toEqual([]);
  });

  test('a cabinet is worked out again only when something of it has changed', async () => {
    const memory = new FilesInMemory({ ...chain, 'd.joinery': '' });
    await memory.open('a.joinery');
    const result = () => {
      const cabinet = memory.document('a.joinery')?.parseResult.value.entries.find(isCabinet);
      return cabinet && memory.services.joinery.joinery.Fits.of(cabinet).result;
    };
    const before = result();
    await memory.open('d.joinery');
    await memory.write('d.joinery', sheet('oak'));
    expect(result()).toBe(before);
    await memory.write('a.joinery', `${chain['a.joinery']}\n// a note below`);
    expect(result()).toBe(before);
    await memory.write('c.joinery', sheet('ply', 17));
    expect(result()).not.toBe(before);
  });
});
