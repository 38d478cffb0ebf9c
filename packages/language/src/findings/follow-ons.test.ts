import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { examineText, FilesInMemory } from '../testing/files.fixture.js';

const DESK = `import "dryfit:sheets.joinery"
material ply18 { thickness 18 }
cabinet Desk {
  part lh, rh : upright of ply18
  part shelf  : level of ply18
  width 400 over lh and rh
  height 300 of lh, rh
  depth 320 of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  butt shelf between lh and rh {
    bottom 100 above lh.bottom
    flush rear, front
    connect none "glued"
  }
}
`;
const codes = async (text: string) =>
  new Set((await examineText(text.replace(/^import.*\n/, ''))).findings.map(({ code }) => code));
/** What is found in the desk anyway, however it is written. */
const anyway = await codes(DESK);
const found = async (from: string | RegExp, to: string) =>
  [...(await codes(DESK.replace(from, to)))].filter((code) => !anyway.has(code));

describe('a slip in one line', () => {
  test.each([
    ['a word that cannot be read', 'butt shelf between', 'butt shelf betwen', ['syntax']],
    ['a part mistyped in a joint', 'butt shelf', 'butt shelv', ['unknown-name']],
    ['a side that cannot be meant', 'bottom 100 above lh.bottom', 'bottom 100 above lh.left', ['wrong-side']],
    ['a size whose word is mistyped', 'height 300 of', 'hieght 300 of', ['syntax']],
  ])('%s is the only thing told', async (_, from, to, wanted) => {
    expect(await found(from, to)).toEqual(wanted);
  });

  test('does not hide what is wrong elsewhere', async () => {
    const two = DESK.replace('height 300 of', 'hieght 300 of').replace(
      'width 400',
      'width 400 over lh and rh\n  width 500',
    );
    expect(await codes(two)).toContain('does-not-close');
  });
});

describe('while a line cannot be read', () => {
  test.each([
    ['a size', 'height 300 of lh', '  hieght 300 of lh'],
    ['a joint', 'butt shelf', 'btut shelf'],
    ['a side', 'bottom 100 above lh.bottom', 'bottom 100 above lh.left'],
  ])('%s: a part it does not name is told to be loose all the same', async (_, from, to) => {
    const spare = '  part spare : facing of ply18\n  spare.rear flush with lh\n  width 400';
    const text = DESK.replace('  width 400', spare)
      .replace(from, to)
      .replace(/^import.*\n/, '');
    const { findings } = await examineText(text);
    const loose = findings.filter(({ code }) => code === 'part-not-fixed').flatMap(({ about }) => about.parts ?? []);
    expect(loose).toEqual(['spare']);
  });

  test('a value that it declares: what is as wide as that is not told', async () => {
    const wide = DESK.replace('width 400', 'parameter wide = 400 +\n  width wide');
    expect(await found(DESK, wide)).not.toContain('part-not-fixed');
  });

  const examples = ['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth'];
  test.each(examples)('nothing of %s is told to be loose, whichever line it is', async (name) => {
    const folder = new URL('../../../../examples/', import.meta.url);
    const read = (file: string) => readFileSync(new URL(`${file}.joinery`, folder), 'utf8');
    const texts = { 'shop.joinery': read('shop'), 'bench.joinery': read('bench') };
    const lines = read(name).split('\n');
    const inside = lines.flatMap((line, i) => (/^ +[a-z]/.test(line) ? [i] : []));
    const memory = new FilesInMemory({ ...texts, 'text.joinery': read(name) });
    await memory.examine('text.joinery');
    for (const spoilt of inside) {
      const broken = lines.map((line, i) => (i === spoilt ? line.replace(/[a-z]+/, 'zz ? zz') : line)).join('\n');
      await memory.write('text.joinery', broken);
      const told = memory.found('text.joinery').filter(({ code }) => code.startsWith('part-'));
      expect([lines[spoilt], told.map(({ code, about }) => [code, about.parts])]).toEqual([lines[spoilt], []]);
    }
  });
});

test('a part that nothing mentions is told once, as the error that it is', async () => {
  expect(await found('part shelf  :', 'part shelf, spare :')).toEqual(['part-not-fixed']);
});

test('a size that nothing fixes is told where every line can be read', async () => {
  expect(await found('  depth 320 of lh, rh\n', '')).toEqual(['part-not-fixed']);
});

describe('what is allowed', () => {
  const allowing = DESK.replace('width 400', 'allow look-alike "by colour"\n  width 400');

  test('and not found is told where all else is right', async () => {
    expect(await found(DESK, allowing)).toEqual(['allow-unused']);
  });

  test.each([
    ['a line cannot be read', 'height 300 of', 'hieght 300 of', 'syntax'],
    ['a size is missing', '  depth 320 of lh, rh\n', '', 'part-not-fixed'],
    ['an import is missing', 'material ply18', 'import "sheeets.joinery"\nmaterial ply18', 'missing-import'],
  ])('is not to be taken out while %s', async (_, from, to, code) => {
    expect(await found(DESK, allowing.replace(from, to))).toEqual([code]);
  });
});

describe('a sheet whose thickness nobody knows', () => {
  const shop = 'material ply18 { thicknes 18 }';
  const desk = DESK.replace(/^import.*\n/, '').replace(/^material.*\n/, '');

  test.each([
    ['its file is not there', {}, ['missing-import']],
    ['it has none', { 'shop.joinery': shop }, []],
  ])('makes no part loose: %s', async (_, files, wanted) => {
    const memory = new FilesInMemory({ ...files, 'text.joinery': `import "shop.joinery"\n${desk}` });
    const { findings } = await memory.examine('text.joinery');
    expect([...new Set(findings.map(({ code }) => code))]).toEqual(wanted);
  });

  test('a part that is loose all the same is told', async () => {
    const text = `import "shop.joinery"\n${desk.replace('  depth 320 of lh, rh\n', '')}`;
    const { findings } = await new FilesInMemory({ 'shop.joinery': shop, 'text.joinery': text }).examine(
      'text.joinery',
    );
    expect(findings.map(({ code }) => code)).toEqual(['part-not-fixed']);
  });
});
