import { describe, expect, test } from 'vitest';
import { DocumentHighlightKind } from 'vscode-languageserver';
import { marked } from '../testing/marked.fixture.js';
import { serve, uriOf } from './served.fixture.js';

const TEXTS = {
  'shop.joinery': 'material häll { thickness 18 }\npattern few { lines 70 }\n',
  'rack.joinery': `import "shop.joinery"
import "dryfit:connectors"
import "gone.joinery"
cabinet Rack {
  parameter wide = 600
  parts shelf 1 to 2 : level of häll
  part lh : upright of häll
  connect biscuit20 by few
  butt shelf to lh.right { bottom 10, 200 above lh.bottom  allow thin-wall "so it is" }
  shelf 2.front flush with lh
}
`,
  'job.joinery': 'import "rack.joinery"\njob J { 2 of Rack(wide = 450) }\n',
};
type Path = keyof typeof TEXTS;

async function at(path: Path, words: string) {
  const served = await serve(TEXTS);
  const { text, offset } = marked(words);
  const place = served.at(path, TEXTS[path].indexOf(text) + offset);
  return { ...served, document: served.document(path), served, place };
}

/** What a definition leads to: the file, and its words there. */
async function definition(path: Path, words: string): Promise<string | undefined> {
  const { joinery, document, place, shared } = await at(path, words);
  const [link] = (await joinery.lsp.DefinitionProvider?.getDefinition(document, place)) ?? [];
  const target = shared.workspace.LangiumDocuments.all.find(({ uri }) => `${uri}` === link?.targetUri);
  return (
    link && `${link.targetUri.replace(`${uriOf('')}`, '')} ${target?.textDocument.getText(link.targetSelectionRange)}`
  );
}

describe('going to where a thing is given', () => {
  test.each<[Path, string, string | undefined]>([
    ['rack.joinery', 'of h|äll', 'shop.joinery häll'],
    ['rack.joinery', 'of |häll', 'shop.joinery häll'],
    ['rack.joinery', 'by fe|w', 'shop.joinery few'],
    ['rack.joinery', 'sh|elf to', 'rack.joinery shelf'],
    ['rack.joinery', 'shelf 2|.front', 'rack.joinery shelf'],
    ['rack.joinery', 'biscuit|20', 'dryfit:/connectors.joinery biscuit20'],
    ['job.joinery', 'of R|ack', 'rack.joinery Rack'],
    ['job.joinery', 'wi|de', 'rack.joinery wide'],
    ['rack.joinery', '"sh|op.joinery"', 'shop.joinery '],
    ['rack.joinery', '"dryfit:conn|ectors"', 'dryfit:/connectors.joinery '],
    ['rack.joinery', '"gone|.joinery"', undefined],
    ['rack.joinery', 'allow thin|-wall', undefined],
    ['rack.joinery', 'lh.bot|tom', undefined],
    ['rack.joinery', '1|0, 200', undefined],
  ])('%s %s', async (path, words, target) => {
    expect(await definition(path, words)).toBe(target);
  });
});

describe('finding where a thing is used', () => {
  test('in all files, from any of them', async () => {
    for (const [path, words] of [
      ['job.joinery', 'wi|de'],
      ['rack.joinery', 'wi|de'],
    ] as const) {
      const { joinery, document, place } = await at(path, words);
      const found = await joinery.lsp.ReferencesProvider?.findReferences(document, {
        ...place,
        context: { includeDeclaration: true },
      });
      expect(found?.map(({ uri, range }) => [uri, range.start.line]).sort()).toEqual([
        [`${uriOf('job.joinery')}`, 1],
        [`${uriOf('rack.joinery')}`, 4],
      ]);
    }
  });

  test('in the file at hand, where it is given told from where it is used', async () => {
    const { joinery, document, place } = await at('rack.joinery', 'shelf 2|.front');
    const found = await joinery.lsp.DocumentHighlightProvider?.getDocumentHighlight(document, place);
    expect(found?.map(({ range, kind }) => [range.start.line, kind])).toEqual([
      [5, DocumentHighlightKind.Write],
      [8, DocumentHighlightKind.Read],
      [9, DocumentHighlightKind.Read],
    ]);
  });

  test('by name in the whole workspace, with the cabinet it is in', async () => {
    const { shared } = await serve(TEXTS);
    const find = async (query: string) =>
      (await shared.lsp.WorkspaceSymbolProvider?.getSymbols({ query }))?.map(
        ({ name, containerName }) => `${name} in ${containerName}`,
      );
    expect(await find('')).toEqual([
      'häll in shop.joinery',
      'few in shop.joinery',
      'Rack in rack.joinery',
      'wide in Rack',
      'shelf in Rack',
      'lh in Rack',
      'J in job.joinery',
    ]);
    expect(await find('slf')).toEqual(['shelf in Rack']);
    expect(await find('biscuit20')).toEqual(['biscuit20 in connectors.joinery']);
    expect(await find('nothing at all')).toEqual([]);
  });
});

test('imports are links, those of the built-in library as well', async () => {
  const { joinery, document } = await serve(TEXTS);
  const rack = document('rack.joinery');
  const textDocument = { uri: `${uriOf('rack.joinery')}` };
  const links = await joinery.lsp.DocumentLinkProvider?.getDocumentLinks(rack, { textDocument });
  expect(links?.map(({ range, target }) => [rack.textDocument.getText(range), target])).toEqual([
    ['shop.joinery', `${uriOf('shop.joinery')}`],
    ['dryfit:connectors', 'dryfit:/connectors.joinery'],
    ['gone.joinery', `${uriOf('gone.joinery')}`],
  ]);
});

test('what is turned off gives nothing and works nothing out', async () => {
  const { joinery, document } = await serve(TEXTS);
  const rack = document('rack.joinery');
  const textDocument = { uri: `${uriOf('rack.joinery')}` };
  const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  const ask = async () => [
    (await joinery.lsp.InlayHintProvider?.getInlayHints(rack, { textDocument, range }))?.length,
    (await joinery.lsp.CodeLensProvider?.provideCodeLens(rack, { textDocument }))?.length,
  ];
  const set = (dryfit: unknown) => joinery.editor.Settings.updateConfiguration({ settings: { dryfit } });
  let asked = 0;
  const { LastGood } = joinery.editor;
  const real = LastGood.of.bind(LastGood);
  LastGood.of = (cabinet) => {
    asked += 1;
    return real(cabinet);
  };
  set({ lenses: false, hints: { sizes: false, spacers: false, slotCounts: false } });
  expect(await ask()).toEqual([0, 0]);
  set({ joinery: false });
  expect(await ask()).toEqual([0, 0]);
  expect(asked).toBe(0);
  set({});
  expect((await ask()).every((count) => (count ?? 0) > 0)).toBe(true);
  expect(asked).toBe(1);
});
