import { type LangiumDocuments, URI } from 'langium';
import type { ClientCapabilities, TextEdit, WorkspaceEdit } from 'vscode-languageserver-protocol';
import type { Change } from '../fixes/fix.js';
import { rangeOf } from './convert.js';

/** A client that can make files as part of an edit. */
export const makesFiles = ({ workspace }: ClientCapabilities): boolean =>
  workspace?.workspaceEdit?.documentChanges === true &&
  workspace.workspaceEdit.resourceOperations?.includes('create') === true;

/** A change in the words of the editor protocol. */
export function workspaceEdit({ edits, newFiles = [] }: Change, documents: LangiumDocuments): WorkspaceEdit {
  const changes: Record<string, TextEdit[]> = {};
  for (const { uri, start, end, text } of edits) {
    const document = documents.getDocument(URI.parse(uri));
    if (!document) continue;
    const own = changes[uri] ?? [];
    own.push({ range: rangeOf(document, { start, end }), newText: text });
    changes[uri] = own;
  }
  if (newFiles.length === 0) return { changes };
  const start = { line: 0, character: 0 };
  return {
    documentChanges: [
      ...newFiles.flatMap(({ uri, text }) => [
        { kind: 'create' as const, uri, options: { overwrite: false, ignoreIfExists: false } },
        { textDocument: { uri, version: null }, edits: [{ range: { start, end: start }, newText: text }] },
      ]),
      ...Object.entries(changes).map(([uri, own]) => ({ textDocument: { uri, version: null }, edits: own })),
    ],
  };
}
