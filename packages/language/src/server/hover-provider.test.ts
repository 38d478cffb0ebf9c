import { readFileSync } from 'node:fs';
import { type LangiumDocument, TextDocument, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { expect, test, vi } from 'vitest';
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
  return { type, hover, shared, joinery };
}

test('a broken text keeps what was last found, and says so', async () => {
  const { type, hover } = await typing();
  await type(text);
  expect(await hover('shelf     : level')).toMatch(/"value":"\*\*shelf\*\*.*564\.6 × 538 × 17\.7/);
  await type(text.replace('bottom 350 above base.bottom', 'bottom 350 ab'));
  expect(await hover('shelf     : level')).toMatch(/Of an earlier text.*564\.6 × 538 × 17\.7/);
  expect(await hover('butt shelf')).toMatch(/Of an earlier text.*22 = 12 \+ 10/);
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

/** The pictures in a hover, as the texts they are. */
const pictures = (hover: string): readonly string[] =>
  [...hover.matchAll(/!\[[^\]]+\]\(data:image\/svg\+xml;base64,([^)]+)\)/g)].map(([, coded = '']) =>
    Buffer.from(coded, 'base64').toString('utf8'),
  );

test('a part has a small drawing with its sizes and slots, on white, and no larger than an editor shows', async () => {
  const { type, hover } = await typing();
  for (const name of ['periodicals', 'bookcase', 'rail-base', 'display-plinth', 'returns-bin']) {
    const example = readFileSync(new URL(`${name}.joinery`, folder), 'utf8');
    await type(example);
    const parts = [...example.matchAll(/^ *parts? +(.*?) *:/gm)].map(([line]) => line);
    expect(parts.length).toBeGreaterThan(1);
    for (const line of parts) {
      const found = await hover(line.trim().replace(/^parts? +/, ''));
      const [drawing = ''] = pictures(found);
      expect(drawing).toMatch(/^<\?xml.*<svg .*<rect class="ground"[^>]*fill="#fff".*<\/svg>\s*$/s);
      expect(found.length).toBeLessThan(60_000);
    }
  }
  await type(text);
  const [shelf = ''] = pictures(await hover('shelf     : level'));
  for (const figure of ['564.6', '538', '>48<', '>158<', '>478<']) expect(shelf).toContain(figure);
});

test('a drawing is left out where the settings or the client want none', async () => {
  const { type, hover, joinery, shared } = await typing();
  await type(text);
  joinery.editor.Settings.initialize({
    processId: null,
    rootUri: null,
    capabilities: {},
    initializationOptions: { dryfit: { hoverDrawing: false } },
  });
  expect(await hover('shelf     : level')).toMatch(/564\.6 × 538/);
  expect(await hover('shelf     : level')).not.toContain('data:image');
  joinery.editor.Settings.initialize({
    processId: null,
    rootUri: null,
    capabilities: {},
    initializationOptions: { dryfit: {} },
  });
  expect(await hover('shelf     : level')).toContain('data:image');
  await shared.lsp.LanguageServer.initialize({
    processId: null,
    rootUri: null,
    capabilities: { textDocument: { hover: { contentFormat: ['plaintext'] } } },
  });
  expect(await hover('shelf     : level')).toMatch(/"kind":"plaintext".*564\.6 × 538/);
  expect(await hover('shelf     : level')).not.toContain('data:image');
});

test('right after a keystroke a changed cabinet is told as it was, and nothing is worked out for it', async () => {
  const { type, hover, shared, joinery } = await typing();
  const other = text.replace(/^cabinet Periodicals/m, 'cabinet Other {\n  part alone : level of birch18\n}\n\n$&');
  await type(other);
  shared.workspace.DocumentBuilder.updateBuildOptions = {};
  const worked = vi.spyOn(joinery.joinery.Fits, 'of');
  await type(other.replace('deep = 560', 'deep = 500'));
  expect(await hover('shelf     : level')).toMatch(/Of an earlier text.*564\.6 × 538 × 17\.7/);
  // The one that has not changed is known still.
  expect(await hover('alone : level')).not.toContain('Of an earlier text');
  expect(worked).not.toHaveBeenCalled();
  shared.workspace.DocumentBuilder.updateBuildOptions = { validation: true };
  await type(other.replace('deep = 560', 'deep = 501'));
  expect(await hover('shelf     : level')).toMatch(/"value":"\*\*shelf\*\*.*564\.6 × 479 × 17\.7/);
});

test('a line of a job keeps its own values while the text is broken', async () => {
  const { type, hover } = await typing();
  await type(text);
  await type(text.replace('bottom 350 above base.bottom', 'bottom 350 ab'));
  expect(await hover('Periodicals(wide = 450')).toMatch(/Of an earlier text.*450 × 320 × 720/);
});
