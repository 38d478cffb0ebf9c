import { readFileSync } from 'node:fs';
import { TextDocument, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { createJoineryServerServices } from './services.js';

const folder = new URL('../../../../examples/', import.meta.url);

/** A rack in which something is found, and where it is taken to lie. */
export const text = readFileSync(new URL('periodicals.joinery', folder), 'utf8').replace(
  'rear set back 16',
  'rear set back 17',
);
export const uri = URI.parse(new URL('cured.joinery', folder).href);

/** A server with that file open, and what is found in it first. */
export async function found() {
  const { shared, joinery } = createJoineryServerServices(NodeFileSystem);
  const { DocumentBuilder, LangiumDocuments, TextDocuments, WorkspaceManager } = shared.workspace;
  await WorkspaceManager.initializeWorkspace([]);
  DocumentBuilder.updateBuildOptions = { validation: true };
  TextDocuments.set(TextDocument.create(uri.toString(), 'joinery', 1, text));
  await DocumentBuilder.update([uri], []);
  const document = await LangiumDocuments.getOrCreateDocument(uri);
  const [finding] = joinery.editor.Examinations.of(document).findings;
  if (!finding) throw new Error('nothing is found');
  return { shared, joinery, document, finding };
}
