import { readFileSync } from 'node:fs';
import { type LangiumDocument, TextDocument, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { expect, test } from 'vitest';
import { createJoineryServerServices } from './services.js';

const folder = new URL('../../../../examples/', import.meta.url);
const text = readFileSync(new URL('periodicals.joinery', folder), 'utf8');
const uri = URI.parse(new URL('typed.joinery', folder).href);

/** A server with one open file that is typed in, and what it shows there. */
async function typing() {
  const { shared, joinery } = createJoineryServerServices(NodeFileSystem);
  const { DocumentBuilder, LangiumDocuments, TextDocuments, WorkspaceManager } = shared.workspace;
  await WorkspaceManager.initializeWorkspace([]);
  // As a server does when it starts: what is kept of a text is kept from then on.
  const { HoverProvider } = joinery.lsp;
  DocumentBuilder.updateBuildOptions = { validation: true };
  let version = 0;
  const type = async (content: string) => {
    TextDocuments.set(TextDocument.create(uri.toString(), 'joinery', ++version, content));
    await DocumentBuilder.update([uri], []);
  };
  const hover = async (words: string) => {
    const document: LangiumDocument = await LangiumDocuments.getOrCreateDocument(uri);
    const position = document.textDocument.positionAt(document.textDocument.getText().indexOf(words));
    const found = await HoverProvider?.getHoverContent(document, {
      textDocument: { uri: uri.toString() },
      position,
    });
    return JSON.stringify(found?.contents ?? '');
  };
  return { type, hover };
}

test('a broken text keeps what was last found, and says so', async () => {
  const { type, hover } = await typing();
  await type(text);
  expect(await hover('shelf     : level')).toMatch(/"value":"\*\*shelf\*\*.*564\.6 × 538 × 17\.7/);
  await type(text.replace('bottom 350 above base.bottom', 'bottom 350 ab'));
  expect(await hover('shelf     : level')).toMatch(/as it last could be read.*564\.6 × 538 × 17\.7/);
  expect(await hover('butt shelf')).toMatch(/as it last could be read.*22 = 12 \+ 10/);
  await type(text.replace('deep = 560', 'deep = 500'));
  expect(await hover('shelf     : level')).toMatch(/"value":"\*\*shelf\*\*.*564\.6 × 478 × 17\.7/);
});

test('a text that was never whole shows what can be known', async () => {
  const { type, hover } = await typing();
  await type(text.replace('bottom 350 above base.bottom', 'bottom 350 ab'));
  expect(await hover('shelf     : level')).toContain('**shelf**: one level part');
  await type('cabinet A { part shelf : level of nothing  width over');
  expect(await hover('shelf')).toContain('not fixed');
});
