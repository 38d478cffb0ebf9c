import { readFileSync } from 'node:fs';
import { EmptyFileSystem, URI } from 'langium';
import { expect, test } from 'vitest';
import { createJoineryServerServices } from './services.js';

const text = readFileSync(new URL('../../../../examples/periodicals.joinery', import.meta.url), 'utf8');

async function open() {
  const { shared, joinery } = createJoineryServerServices(EmptyFileSystem);
  const uri = URI.parse('memory:///outlined.joinery');
  const document = shared.workspace.LangiumDocumentFactory.fromString(text, uri);
  shared.workspace.LangiumDocuments.addDocument(document);
  await shared.workspace.DocumentBuilder.build([document]);
  return { lsp: joinery.lsp, document, params: { textDocument: { uri: uri.toString() } } };
}

test('the outline has cabinets with their parameters and parts, and jobs', async () => {
  const { lsp, document, params } = await open();
  const symbols = (await lsp.DocumentSymbolProvider?.getSymbols(document, params)) ?? [];
  expect(symbols.map(({ name }) => name)).toEqual(['Periodicals', 'Library']);
  expect(symbols[0]?.children?.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['wide', 'high', 'deep', 'lh', 'rh', 'top', 'base', 'shelf', 'back']),
  );
});

test('braces that span lines fold', async () => {
  const { lsp, document, params } = await open();
  const folds = (await lsp.FoldingRangeProvider?.getFoldingRanges(document, params)) ?? [];
  const lines = text.split('\n');
  const opening = lines.flatMap((line, index) => (/\{$/.test(line) ? [index] : []));
  expect(folds.map(({ startLine }) => startLine)).toEqual(opening);
});
