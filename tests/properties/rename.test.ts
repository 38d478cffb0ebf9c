import { readdirSync, readFileSync } from 'node:fs';
import { EmptyFileSystem, URI } from 'langium';
import { expect, test } from 'vitest';
import { isCabinet } from '../../packages/language/src/generated/ast.js';
import { applied } from '../../packages/language/src/rename/reads-back.js';
import { createJoineryServerServices } from '../../packages/language/src/server/services.js';
import { digest } from '../support/digest.js';

const folder = new URL('../../examples/', import.meta.url);
const texts = new Map(
  readdirSync(folder)
    .filter((name) => name.endsWith('.joinery'))
    .map((name) => [`memory:/lindwell/${name}`, readFileSync(new URL(name, folder), 'utf8')]),
);

async function serve(files: ReadonlyMap<string, string>) {
  const { shared, joinery } = createJoineryServerServices(EmptyFileSystem);
  await shared.workspace.WorkspaceManager.initializeWorkspace([]);
  const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder } = shared.workspace;
  const documents = [...files].map(([uri, text]) => LangiumDocumentFactory.fromString(text, URI.parse(uri)));
  for (const document of documents) LangiumDocuments.addDocument(document);
  await DocumentBuilder.build(documents);
  const fits = documents.flatMap(({ parseResult }) =>
    (parseResult.value as unknown as { entries: never[] }).entries
      .filter(isCabinet)
      .map((cabinet) => digest(joinery.joinery.Fits.of(cabinet).result, false)),
  );
  return { joinery, documents, fits };
}

/**
 * A digest with a name as another in all its strings. Order is left aside, since it follows the names, and so is which
 * of several chains of facts that give a size is told as its reason.
 */
function withName(value: unknown, from: string, to: string): unknown {
  if (typeof value === 'string')
    return value.replace(new RegExp(`(?<![\\p{L}\\p{N}_-])${from}(?![\\p{L}\\p{N}_-])`, 'gu'), to);
  if (Array.isArray(value))
    return value.map((one) => withName(one, from, to)).sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  if (typeof value !== 'object' || value === null) return value;
  const told = Object.entries(value).filter(([key]) => key !== 'reasons' && key !== 'places');
  const entries = told.map(([key, one]) => [withName(key, from, to), withName(one, from, to)]);
  return Object.fromEntries(entries.sort(([a], [b]) => (String(a) < String(b) ? -1 : 1)));
}

/** Names that occur nowhere else, so that a digest can be read with the one for the other. */
const NEW = ['zzqx', 'Häll9'];

test.each([...texts.keys()])('a fit is the same up to the name that is changed: %s', async (uri) => {
  const { joinery, documents, fits } = await serve(texts);
  const document = documents.find((one) => one.uri.toString() === uri);
  if (!document) throw new Error(uri);
  const text = document.textDocument.getText();
  const names = new Map<string, number>();
  for (const { 0: word, index } of text.matchAll(
    /(?<=\b(?:cabinet|parts?|parameter|material|pattern|connector|machine)\s+)[\p{L}_][\p{L}\p{N}_]*/gu,
  ))
    if (!names.has(word)) names.set(word, index);
  expect(names.size).toBeGreaterThan(0);
  let changed = 0;
  for (const [name, index] of names) {
    const position = document.textDocument.positionAt(index);
    const newName = NEW[changed % NEW.length] as string;
    const edit = await joinery.lsp.RenameProvider?.rename(document, { textDocument: { uri }, position, newName });
    if (!edit) continue;
    const after = new Map(texts);
    for (const [file, edits] of Object.entries(edit.changes ?? {})) {
      const of = documents.find((one) => one.uri.toString() === file)?.textDocument;
      if (!of) throw new Error(file);
      const found = edits.map(({ range, newText }) => ({
        start: of.offsetAt(range.start),
        end: of.offsetAt(range.end),
        text: newText,
      }));
      after.set(file, applied(of.getText(), found));
    }
    const renamed = await serve(after);
    expect(withName(renamed.fits, newName, name)).toEqual(withName(fits, newName, name));
    changed += 1;
  }
  expect(changed).toBeGreaterThan(0);
});
