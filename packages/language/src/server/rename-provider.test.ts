import { describe, expect, test } from 'vitest';
import { applied } from '../rename/reads-back.js';
import { marked } from '../testing/marked.fixture.js';
import { stretchOf } from './convert.js';
import { serve, uriOf } from './served.fixture.js';

const SHOP = `import "dryfit:connectors"
material birch { thickness 18 }
material oak { thickness 21 }
pattern few { lines 70, 140 }
`;
const RACK = `import "shop.joinery"
cabinet Rack {
  width wide over lh and rh
  parameter wide = 600
  parameter high = 700
  part lh, rh : upright of birch
  parts shelf 1 to 2 : level of oak
  height high of lh
  connect biscuit20 by few
  butt shelf between lh and rh { bottom 100, 400 above lh.bottom }
  shelf 2.front flush with lh
  parameter deep = 300  rh.rear flush with lh
}
`;
const JOB = `import "rack.joinery"
job Library { 2 of Rack(wide = 450) late shelf 2 of Rack }
`;
const TEXTS = { 'shop.joinery': SHOP, 'rack.joinery': RACK, 'job.joinery': JOB };
type Path = keyof typeof TEXTS;

/** Renames what stands at the cursor of words in a file; the texts after, or why not. */
async function renamed(path: Path, words: string, newName: string): Promise<Partial<typeof TEXTS> | string> {
  const { joinery, document, at } = await serve(TEXTS);
  const cursor = marked(words);
  const place = at(path, TEXTS[path].indexOf(cursor.text) + cursor.offset);
  try {
    const edit = await joinery.lsp.RenameProvider?.rename(document(path), { ...place, newName });
    const after = (Object.keys(TEXTS) as Path[]).flatMap((name): [string, string][] => {
      const edits = edit?.changes?.[`${uriOf(name)}`];
      if (!edits) return [];
      const found = edits.map(({ range, newText }) => ({ ...stretchOf(document(name), range), text: newText }));
      return [[name, applied(TEXTS[name], found)]];
    });
    return Object.fromEntries(after);
  } catch (error) {
    return (error as Error).message;
  }
}

const all = (path: Path, from: RegExp, to: string) => TEXTS[path].replace(from, to);

describe('rename', () => {
  test('a part where it is declared and used, the number of one as well', async () => {
    const after = {
      'rack.joinery': all('rack.joinery', /\bshelf\b/g, 'board'),
      'job.joinery': all('job.joinery', /\bshelf\b/g, 'board'),
    };
    expect(await renamed('rack.joinery', 'sh|elf between', 'board')).toEqual(after);
    expect(await renamed('rack.joinery', 'lh| and', 'side')).toEqual({
      'rack.joinery': all('rack.joinery', /\blh\b/g, 'side'),
    });
  });

  test('a parameter used before it is declared, and in the jobs of other files', async () => {
    expect(await renamed('rack.joinery', '|wide over', 'outside')).toEqual({
      'rack.joinery': all('rack.joinery', /\bwide\b/g, 'outside'),
      'job.joinery': all('job.joinery', /\bwide\b/g, 'outside'),
    });
  });

  test('a material and a cabinet from either end', async () => {
    const birch = {
      'shop.joinery': all('shop.joinery', /\bbirch\b/g, 'plywood'),
      'rack.joinery': all('rack.joinery', /\bbirch\b/g, 'plywood'),
    };
    expect(await renamed('rack.joinery', 'of birc|h', 'plywood')).toEqual(birch);
    expect(await renamed('shop.joinery', 'birc|h {', 'plywood')).toEqual(birch);
    expect(await renamed('job.joinery', 'of |Rack', 'Stand')).toEqual({
      'rack.joinery': all('rack.joinery', /\bRack\b/g, 'Stand'),
      'job.joinery': all('job.joinery', /\bRack\b/g, 'Stand'),
    });
  });

  test('to a word of the language, where that reads back', async () => {
    expect(await renamed('rack.joinery', 'lh|, rh', 'top')).toEqual({
      'rack.joinery': all('rack.joinery', /\blh\b/g, 'top'),
    });
  });

  test('is refused for what is no name, or would be read otherwise', async () => {
    for (const name of ['', '3', 'two words', 'a-b', 'a.b', '"x"', '{']) {
      expect(await renamed('rack.joinery', 'lh|, rh', name)).toMatch(/is not a name/);
    }
    // `300  in` is a length in inches.
    expect(await renamed('rack.joinery', 'r|h.rear', 'in')).toMatch(/^in would be read as a word of the language/);
  });

  test('is refused where the name is taken, with the reason', async () => {
    expect(await renamed('rack.joinery', 'lh|, rh', 'shelf')).toBe('Rack has a part called shelf already.');
    expect(await renamed('rack.joinery', '|wide over', 'high')).toBe('Rack has a parameter called high already.');
    expect(await renamed('shop.joinery', 'birc|h {', 'oak')).toMatch(
      /^A material called oak is visible already where birch is/,
    );
    expect(await renamed('rack.joinery', 'lh|, rh', 'wide')).toEqual(expect.any(Object));
  });

  test('is refused for what belongs to the built-in library', async () => {
    expect(await renamed('rack.joinery', 'biscuit|20', 'biscuit')).toMatch(
      /^biscuit20 belongs to the built-in library/,
    );
    const { joinery, document, at } = await serve(TEXTS);
    const place = at('rack.joinery', RACK.indexOf('biscuit20'));
    expect(() => joinery.lsp.RenameProvider?.prepareRename(document('rack.joinery'), place)).toThrow(
      /built-in library/,
    );
  });

  test('on the number of a part is that of the part', async () => {
    const after = {
      'rack.joinery': all('rack.joinery', /\bshelf\b/g, 'board'),
      'job.joinery': all('job.joinery', /\bshelf\b/g, 'board'),
    };
    expect(await renamed('job.joinery', 'shelf |2 of', 'board')).toEqual(after);
    expect(await renamed('rack.joinery', 'shelf |2.front', 'board')).toEqual(after);
    const { joinery, document, at } = await serve(TEXTS);
    const start = RACK.indexOf('shelf 2.front');
    const range = joinery.lsp.RenameProvider?.prepareRename(
      document('rack.joinery'),
      at('rack.joinery', start + 'shelf '.length),
    );
    expect(range).toMatchObject({ start: at('rack.joinery', start).position });
  });

  test('is offered on names only', async () => {
    const { joinery, document, at } = await serve(TEXTS);
    const words = ['wi|dth', 'between| ', '10|0', 'flush| with', '1 to |2', '|{', 'shop.|joinery'];
    for (const word of words) {
      const { text, offset } = marked(word);
      const place = at('rack.joinery', RACK.indexOf(text) + offset);
      expect([word, joinery.lsp.RenameProvider?.prepareRename(document('rack.joinery'), place)]).toEqual([
        word,
        undefined,
      ]);
    }
  });
});

describe('files that get another name', () => {
  const moved = async (...moves: readonly [string, string][]) => {
    const { shared, document } = await serve({ ...TEXTS, 'far/desk.joinery': 'import "../shop.joinery"\n' });
    const files = moves.map(([from, to]) => ({ oldUri: `${uriOf(from)}`, newUri: `${uriOf(to)}` }));
    const edit = await shared.lsp.FileOperationHandler?.willRenameFiles?.({ files });
    return Object.fromEntries(
      Object.entries(edit?.changes ?? {}).map(([uri, edits]) => {
        const path = uri.replace(`${uriOf('')}`, '');
        const found = edits.map(({ range, newText }) => ({ ...stretchOf(document(path), range), text: newText }));
        return [path, applied(document(path).textDocument.getText(), found).split('\n')[0]];
      }),
    );
  };

  test('are followed by the imports that name them', async () => {
    expect(await moved(['shop.joinery', 'stock/shop.joinery'])).toEqual({
      'rack.joinery': 'import "stock/shop.joinery"',
      'far/desk.joinery': 'import "../stock/shop.joinery"',
    });
  });

  test('take their own imports along, those of a folder as well', async () => {
    expect(await moved(['rack.joinery', 'far/rack.joinery'])).toEqual({
      'rack.joinery': 'import "../shop.joinery"',
      'job.joinery': 'import "far/rack.joinery"',
    });
    expect(await moved(['far', 'near/by'])).toEqual({ 'far/desk.joinery': 'import "../../shop.joinery"' });
    expect(await moved(['far', 'near'])).toEqual({});
  });
});
