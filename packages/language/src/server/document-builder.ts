import type { Cancellation, LangiumDocument, URI } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { JoineryDocumentBuilder } from '../workspace/document-builder.js';
import { Attention } from './attention.js';

/** Builder of a server: documents that nobody looks at are not examined, and have no findings told. */
export class ServerDocumentBuilder extends JoineryDocumentBuilder {
  readonly attention: Attention;
  /** Documents that the client shows findings of. */
  private readonly shown = new Set<string>();

  constructor(services: LangiumSharedServices) {
    super(services);
    this.attention = new Attention(services);
    this.onUpdate((_, deleted: readonly URI[]) => {
      for (const uri of deleted) {
        this.attention.leave(uri.toString());
        this.shown.delete(uri.toString());
      }
    });
  }

  protected override async validate(
    document: LangiumDocument,
    cancelToken: Cancellation.CancellationToken,
  ): Promise<void> {
    const uri = document.uri.toString();
    if (!this.attention.has(document)) {
      // Whoever told a client of findings takes them back; of the others it hears nothing.
      if (this.shown.delete(uri)) document.diagnostics = [];
      return;
    }
    await super.validate(document, cancelToken);
    if (document.diagnostics?.length) {
      this.shown.add(uri);
      return;
    }
    this.shown.delete(uri);
    if (!this.attention.isOpen(document)) this.attention.leave(uri);
  }
}
