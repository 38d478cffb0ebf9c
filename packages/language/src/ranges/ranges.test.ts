import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../testing/files.fixture.js';
import { marked } from '../testing/marked.fixture.js';
import { foldsOf } from './folding.js';
import { selectionsAt } from './selection.js';

const read = (name: string) => readFileSync(new URL(`../../../../examples/${name}.joinery`, import.meta.url), 'utf8');
const open = async (text: string) =>
  (await new FilesInMemory({ 'desk.joinery': text }).open('desk.joinery')).parseResult.value;

describe('folding', () => {
  test('of braces, imports, comments and regions', async () => {
    const text = `// one
// two
import "a"
import "b"
/* three
   four */
// #region bases
cabinet A {
  part a : level of b

  butt a to b.top {
    flush top
  }
}
// #endregion
limits { step 0.3 }
`;
    expect(foldsOf(await open(text))).toEqual([
      { first: 0, last: 1, kind: 'comment' },
      { first: 2, last: 3, kind: 'imports' },
      { first: 4, last: 5, kind: 'comment' },
      { first: 6, last: 14, kind: 'region' },
      { first: 7, last: 12 },
      { first: 10, last: 11 },
    ]);
  });

  test('of a text with a brace too few or too many folds what is closed', async () => {
    const text = 'cabinet A {\n  butt a to b.top {\n    flush top\n  }\n\n}\n}\ncabinet B {\n  part a : level of b\n';
    expect(foldsOf(await open(text)).map(({ first, last }) => [first, last])).toEqual([
      [0, 4],
      [1, 2],
    ]);
  });
});

describe('selections', () => {
  const grown = async (withCursor: string) => {
    const { text, offset } = marked(withCursor);
    return selectionsAt(await open(text), offset).map(({ start, end }) => text.slice(start, end));
  };

  test('grow from a word over expression, fact, block and statement to the file', async () => {
    const text = 'cabinet A { butt a to b.top { bottom 2 * (wi|de + 3) above b.top  flush top } }\n';
    const plain = text.replace('|', '');
    expect(await grown(text)).toEqual([
      'wide',
      'wide + 3',
      '(wide + 3)',
      '2 * (wide + 3)',
      'bottom 2 * (wide + 3) above b.top',
      'bottom 2 * (wide + 3) above b.top  flush top',
      '{ bottom 2 * (wide + 3) above b.top  flush top }',
      'butt a to b.top { bottom 2 * (wide + 3) above b.top  flush top }',
      '{ butt a to b.top { bottom 2 * (wide + 3) above b.top  flush top } }',
      plain.trim(),
      plain,
    ]);
  });

  test('of a text between quotes begin inside them', async () => {
    expect((await grown('import "sh|op.joinery"\n')).slice(0, 2)).toEqual(['shop.joinery', '"shop.joinery"']);
  });

  test('at any place hold the place and the one before, and end with the file', async () => {
    const text = read('bookcase');
    const file = await open(text);
    for (let offset = 0; offset <= text.length; offset += 1) {
      const found = selectionsAt(file, offset);
      expect(found.at(-1)).toEqual({ start: 0, end: text.length });
      found.forEach(({ start, end }, index) => {
        const before = found[index - 1];
        expect(start <= offset && offset <= end).toBe(true);
        if (before)
          expect(start <= before.start && end >= before.end && end - start > before.end - before.start).toBe(true);
      });
    }
  });
});
