import { type LangiumDocument, type LangiumDocuments, type TextDocument, URI, UriUtils } from 'langium';
import { DefaultDocumentUpdateHandler, type LangiumSharedServices } from 'langium/lsp';
import { type DidChangeWatchedFilesParams, FileChangeType, type TextDocumentChangeEvent } from 'vscode-languageserver';
import { isLibrary } from '../library/library.js';
import type { ServerDocumentBuilder } from './document-builder.js';

/**
 * What counts is the text in the editor while a file is open, and the one on disk from the moment it is closed. News
 * of the disk about an open file changes nothing.
 */
export class JoineryDocumentUpdates extends DefaultDocumentUpdateHandler {
  private readonly documents: LangiumDocuments;
  /** Documents whose edits wait for the end of a burst, by their address. */
  private readonly edited = new Map<string, URI>();
  private timer: ReturnType<typeof setTimeout> | undefined;
  private lastKey = 0;

  constructor(private readonly services: LangiumSharedServices) {
    super(services);
    this.documents = services.workspace.LangiumDocuments;
  }

  /**
   * A key by itself is followed at once. Keys that come while an earlier one is being read are taken together, since
   * reading a text cannot be broken off: the last of them is waited for.
   */
  override didChangeContent({ document }: TextDocumentChangeEvent<TextDocument>): void {
    const uri = URI.parse(document.uri);
    this.edited.set(document.uri, uri);
    (this.services.workspace.DocumentBuilder as ServerDocumentBuilder).expect(uri);
    const now = performance.now();
    const burst = now - this.lastKey < BURST;
    this.lastKey = now;
    if (!burst) {
      this.follow();
      return;
    }
    this.services.workspace.WorkspaceLock.cancelWrite();
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.follow(), PAUSE);
  }

  private follow(): void {
    clearTimeout(this.timer);
    const uris = [...this.edited.values()];
    this.edited.clear();
    this.fireDocumentUpdate(uris, []);
  }

  didCloseDocument({ document }: TextDocumentChangeEvent<TextDocument>): void {
    const uri = URI.parse(document.uri);
    if (isLibrary(uri)) return;
    void this.isThere(uri).then((there) => {
      if (!this.isOpen(uri)) this.fireDocumentUpdate(there ? [uri] : [], there ? [] : [uri]);
    });
  }

  override didChangeWatchedFiles(params: DidChangeWatchedFilesParams): void {
    const { changes } = params;
    const deleted = changes.filter(({ type }) => type === FileChangeType.Deleted).map(({ uri }) => URI.parse(uri));
    const gone = deleted.flatMap((uri) => this.within(uri)).filter((document) => !this.isOpen(document.uri));
    const changed = changes
      .filter(({ type, uri }) => type !== FileChangeType.Deleted && !this.isOpen(URI.parse(uri)))
      .map(({ uri }) => URI.parse(uri));
    const uris = unique(gone.map(({ uri }) => uri));
    this.onWatchedFilesChangeEmitter.fire(params);
    if (changed.length + uris.length > 0) this.fireDocumentUpdate(unique(changed), uris);
  }

  /** A file, or all the files known in a folder. */
  private within(uri: URI): readonly LangiumDocument[] {
    const own = this.documents.getDocument(uri);
    return own ? [own] : this.documents.all.filter((document) => UriUtils.contains(uri, document.uri)).toArray();
  }

  private isOpen(uri: URI): boolean {
    return this.services.workspace.TextDocuments.get(uri) !== undefined;
  }

  private async isThere(uri: URI): Promise<boolean> {
    try {
      return await this.services.workspace.FileSystemProvider.exists(uri);
    } catch {
      return false;
    }
  }
}

/** Keys nearer to one another than this are a burst, ms. */
const BURST = 150;

/** How long the next key of a burst is waited for, ms. */
const PAUSE = 5;

const unique = (uris: readonly URI[]): URI[] => [...new Map(uris.map((uri) => [uri.toString(), uri])).values()];
