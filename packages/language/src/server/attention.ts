import type { LangiumDocument } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';

/**
 * Which documents are worked out. Those that are open; of the others of a workspace, those that have findings told
 * since the whole workspace was last checked, so that nothing told is ever stale. The rest is read and no more: a
 * folder of thousands of cabinets costs no joinery until somebody looks.
 */
export class Attention {
  private readonly told = new Set<string>();

  constructor(private readonly services: LangiumSharedServices) {}

  isOpen({ uri }: Pick<LangiumDocument, 'uri'>): boolean {
    return this.services.workspace.TextDocuments.get(uri) !== undefined;
  }

  has(document: LangiumDocument): boolean {
    return this.isOpen(document) || this.told.has(document.uri.toString());
  }

  /** From now on a document is looked at though it is not open. */
  give(document: LangiumDocument): void {
    this.told.add(document.uri.toString());
  }

  /** A document that is not open needs none any more. */
  leave(uri: string): void {
    this.told.delete(uri);
  }
}
