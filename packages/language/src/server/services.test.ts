import { readFileSync } from 'node:fs';
import { type LangiumDocument, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { expect, test } from 'vitest';
import { createJoineryServerServices } from './services.js';

const uri = URI.parse(new URL('../../../../examples/served.joinery', import.meta.url).href);
const text = readFileSync(new URL('../../../../examples/periodicals.joinery', import.meta.url), 'utf8');

/** The services of a server that has one file open. */
async function serve(content: string) {
  const services = createJoineryServerServices(NodeFileSystem);
  const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder, WorkspaceManager } = services.shared.workspace;
  await WorkspaceManager.initializeWorkspace([]);
  const document: LangiumDocument = LangiumDocumentFactory.fromString(content, uri);
  LangiumDocuments.addDocument(document);
  await DocumentBuilder.build([document], { validation: true });
  const position = (words: string) => document.textDocument.positionAt(document.textDocument.getText().indexOf(words));
  return { ...services, document, position, params: { textDocument: { uri: uri.toString() } } };
}

test('a hover on a part gives its size', async () => {
  const { joinery, document, position, params } = await serve(text);
  const at = { ...params, position: position('shelf     : level') };
  const hover = await joinery.lsp.HoverProvider?.getHoverContent(document, at);
  expect(JSON.stringify(hover?.contents)).toContain('564.6 × 538 × 17.7');
});

test('a definition in an imported file is found', async () => {
  const { joinery, document, position, params } = await serve(text);
  const at = { ...params, position: position('birch18') };
  const [link] = (await joinery.lsp.DefinitionProvider?.getDefinition(document, at)) ?? [];
  expect(link?.targetUri).toMatch(/shop\.joinery$/);
});

test('a text is formatted, and one with a slip in it as well', async () => {
  for (const content of [
    text.replace('  width 6', '     width   6'),
    text.replace('  width 6', '     width   6').replace('flush bottom,', 'flush bottom'),
  ]) {
    const { joinery, document, params } = await serve(content);
    const options = { tabSize: 2, insertSpaces: true };
    const edits = await joinery.lsp.Formatter?.formatDocument(document, { ...params, options });
    expect(edits?.length).toBeGreaterThan(0);
  }
});

test('the built-in library can be opened in the editor', async () => {
  const { shared } = await serve(text);
  const provider = shared.lsp.TextDocumentContentProvider;
  const { Cancellation } = await import('langium');
  const library = { uri: 'dryfit:/connectors.joinery' };
  const content = await provider?.provideTextDocumentContent(library, Cancellation.CancellationToken.None);
  expect(content?.text).toContain('connector biscuit20');
});
