import { type BuildOptions, type Cancellation, DocumentState, type LangiumDocument, type URI } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { importsOf } from '../scope/imports.js';
import { JoineryDocumentBuilder } from '../workspace/document-builder.js';
import { Attention } from './attention.js';

/**
 * Builder of a server. Documents that nobody looks at are not examined, and have no findings told; they are linked
 * after those that are open have been examined, and the next key comes before them.
 */
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

  /** While the open documents are built and others wait, the whole is no further than these. */
  private waiting = false;

  /**
   * An edit is on its way: whoever asks about the document waits until it has been built again.
   * False for a document that is not known yet.
   */
  expect(uri: URI): boolean {
    const document = this.langiumDocuments.getDocument(uri);
    if (!document) return false;
    document.state = DocumentState.Changed;
    this.currentState = DocumentState.Changed;
    return true;
  }

  protected override async buildRead(
    documents: LangiumDocument[],
    options: BuildOptions,
    cancelToken: Cancellation.CancellationToken,
  ): Promise<void> {
    // What imports what is known of all before any is examined.
    this.prepareBuild(documents, options);
    await this.runCancelable(documents, DocumentState.IndexedContent, cancelToken, (document) =>
      this.indexManager.updateContent(document, cancelToken),
    );
    const looked = this.lookedAt(documents);
    const others = documents.filter((document) => !looked.has(document));
    if (looked.size > 0 && others.length > 0) {
      this.waiting = true;
      try {
        await super.buildRead([...looked], options, cancelToken);
      } finally {
        this.waiting = false;
      }
    }
    await super.buildRead(others.length > 0 ? others : documents, options, cancelToken);
  }

  /** The open ones of these documents, and those of them that the open ones import. */
  private lookedAt(documents: readonly LangiumDocument[]): ReadonlySet<LangiumDocument> {
    const looked = new Set(documents.filter((document) => this.attention.isOpen(document)));
    const candidates = new Set(documents);
    for (const document of looked) {
      for (const uri of importsOf(document)) {
        const imported = this.langiumDocuments.getDocument(uri);
        if (imported && candidates.has(imported)) looked.add(imported);
      }
    }
    return looked;
  }

  protected override async runCancelable(
    ...[documents, state, cancelToken, callback]: Parameters<JoineryDocumentBuilder['runCancelable']>
  ): Promise<void> {
    await super.runCancelable(documents, state, cancelToken, callback);
    if (this.waiting) this.currentState = DocumentState.ComputedScopes;
  }

  protected override async notifyBuildPhase(
    documents: LangiumDocument[],
    state: DocumentState,
    cancelToken: Cancellation.CancellationToken,
  ): Promise<void> {
    const untrue = this.waiting && (state === DocumentState.Linked || state === DocumentState.IndexedReferences);
    if (!untrue) await super.notifyBuildPhase(documents, state, cancelToken);
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
