import {
  type BuildOptions,
  type Cancellation,
  DocumentState,
  type LangiumDocument,
  OperationCancelled,
  type URI,
  UriUtils,
} from 'langium';
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

  /** Documents whose text has gone on since they were built. */
  private readonly expected = new Set<string>();

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
    this.expected.add(uri.toString());
    return true;
  }

  /** Some edit has come that is not taken in yet. */
  get isExpecting(): boolean {
    return this.expected.size > 0;
  }

  override async update(changed: URI[], deleted: URI[], cancelToken?: Cancellation.CancellationToken): Promise<void> {
    for (const uri of [...changed, ...deleted]) this.expected.delete(uri.toString());
    await super.update(changed, deleted, cancelToken);
  }

  /**
   * A build that an edit has overtaken may come to its end first, so that all but the edited document are further than
   * that is: whoever asks about it waits for the next build, and so does who asks about a file that was just opened.
   */
  protected override awaitDocumentState(
    state: DocumentState,
    uri: URI,
    cancelToken: Cancellation.CancellationToken,
  ): Promise<URI> {
    const document = this.langiumDocuments.getDocument(uri);
    const known = document !== undefined && !this.expected.has(uri.toString());
    if (known || !this.attention.isOpen({ uri })) return super.awaitDocumentState(state, uri, cancelToken);
    return new Promise((resolve, reject) => {
      const done = () => {
        built.dispose();
        calledOff.dispose();
      };
      const built = this.onDocumentPhase(state, (one) => {
        if (!UriUtils.equals(one.uri, uri)) return;
        done();
        resolve(one.uri);
      });
      const calledOff = cancelToken.onCancellationRequested(() => {
        done();
        reject(OperationCancelled);
      });
    });
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
