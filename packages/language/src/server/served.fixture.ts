import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import type { Position } from 'vscode-languageserver-protocol';
import type { File } from '../generated/ast.js';
import { createJoineryServerServices } from './services.js';

export const uriOf = (path: string): URI => URI.parse(`memory:/lindwell/${path}`);

/** A server over texts in memory, by their paths; none of them is open in an editor. */
export async function serve(texts: Readonly<Record<string, string>>) {
  const services = createJoineryServerServices(EmptyFileSystem);
  const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder, WorkspaceManager } = services.shared.workspace;
  await WorkspaceManager.initializeWorkspace([]);
  const documents = Object.entries(texts).map(([path, text]) =>
    LangiumDocumentFactory.fromString<File>(text, uriOf(path)),
  );
  for (const document of documents) LangiumDocuments.addDocument(document);
  await DocumentBuilder.build(documents);
  const document = (path: string): LangiumDocument<File> =>
    LangiumDocuments.getDocument(uriOf(path)) as LangiumDocument<File>;
  /** What a request for a place in a text says. */
  const at = (path: string, offset: number): { textDocument: { uri: string }; position: Position } => ({
    textDocument: { uri: `${uriOf(path)}` },
    position: document(path).textDocument.positionAt(offset),
  });
  return { ...services, document, at };
}
