import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { serve, uriOf } from './served.fixture.js';

const folder = new URL('../../../../examples/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.joinery'));
const read = (name: string) => readFileSync(new URL(name, folder), 'utf8');
const texts = Object.fromEntries(names.map((name) => [name, read(name)]));

type Served = Awaited<ReturnType<typeof serve>>;

/** Asks for everything that is about a file as a whole. */
async function askWhole({ joinery: { lsp }, document: of, shared }: Served, path: string): Promise<void> {
  const document = of(path);
  const textDocument = { uri: `${uriOf(path)}` };
  const range = { start: { line: 0, character: 0 }, end: document.textDocument.positionAt(Number.MAX_SAFE_INTEGER) };
  const options = { tabSize: 2, insertSpaces: true };
  for (const hint of (await lsp.InlayHintProvider?.getInlayHints(document, { textDocument, range })) ?? [])
    expect(hint.label).not.toBe('');
  for (const lens of (await lsp.CodeLensProvider?.provideCodeLens(document, { textDocument })) ?? [])
    expect(lens.data).toBeDefined();
  await lsp.SemanticTokenProvider?.semanticHighlight(document, { textDocument });
  await lsp.SemanticTokenProvider?.semanticHighlightRange(document, { textDocument, range });
  await lsp.SemanticTokenProvider?.semanticHighlightDelta(document, { textDocument, previousResultId: '' });
  await lsp.DocumentSymbolProvider?.getSymbols(document, { textDocument });
  await lsp.FoldingRangeProvider?.getFoldingRanges(document, { textDocument });
  await lsp.DocumentLinkProvider?.getDocumentLinks(document, { textDocument });
  await lsp.Formatter?.formatDocument(document, { textDocument, options });
  await lsp.Formatter?.formatDocumentRange(document, { textDocument, options, range });
  await shared.lsp.WorkspaceSymbolProvider?.getSymbols({ query: 'l' });
}

/** Asks for everything that is about a place in a file. */
async function askAt({ joinery: { lsp }, document: of, at }: Served, path: string, offset: number): Promise<void> {
  const document = of(path);
  const place = at(path, offset);
  await lsp.DefinitionProvider?.getDefinition(document, place);
  await lsp.ReferencesProvider?.findReferences(document, { ...place, context: { includeDeclaration: true } });
  await lsp.DocumentHighlightProvider?.getDocumentHighlight(document, place);
  await lsp.SignatureHelp?.provideSignatureHelp(document, place);
  try {
    await lsp.RenameProvider?.prepareRename(document, place);
  } catch (error) {
    expect((error as Error).message).toMatch(/built-in library/);
  }
}

describe('everything answers', () => {
  test.each(names)('at every place of %s', async (name) => {
    const served = await serve(texts);
    await askWhole(served, name);
    for (let offset = 0; offset <= (texts[name]?.length ?? 0); offset += 1) await askAt(served, name, offset);
  });

  test('in a text that lacks any one word or mark', async () => {
    const text = texts['periodicals.joinery'] ?? '';
    const places = [...text.matchAll(/[\p{L}_]+|\d[\d.]*|"[^"]*"|[^\s\w]/gu)];
    expect(places.length).toBeGreaterThan(150);
    const broken = Object.fromEntries(
      places.map(({ index, 0: word }) => [`b${index}.joinery`, text.slice(0, index) + text.slice(index + word.length)]),
    );
    const served = await serve({ ...broken, 'shop.joinery': texts['shop.joinery'] ?? '' });
    for (const { index } of places) {
      await askWhole(served, `b${index}.joinery`);
      for (const near of [index - 1, index, index + 1]) await askAt(served, `b${index}.joinery`, Math.max(0, near));
    }
  });

  test('in a text that is empty, or nothing but a comment', async () => {
    const served = await serve({ 'a.joinery': '', 'b.joinery': '// nothing', 'c.joinery': '\n\n' });
    for (const path of ['a.joinery', 'b.joinery', 'c.joinery']) {
      await askWhole(served, path);
      for (const offset of [0, 1, 5]) await askAt(served, path, offset);
    }
  });
});
