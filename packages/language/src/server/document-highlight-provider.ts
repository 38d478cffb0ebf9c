import type { ReferenceDescription } from 'langium';
import { DefaultDocumentHighlightProvider } from 'langium/lsp';
import { type DocumentHighlight, DocumentHighlightKind } from 'vscode-languageserver';

/** Langium's highlights, the place where a name is given told from those where it is used. */
export class JoineryDocumentHighlightProvider extends DefaultDocumentHighlightProvider {
  protected override createDocumentHighlight(reference: ReferenceDescription): DocumentHighlight {
    const given = reference.local && reference.sourcePath === reference.targetPath;
    const kind = given ? DocumentHighlightKind.Write : DocumentHighlightKind.Read;
    return { range: reference.segment.range, kind };
  }
}
