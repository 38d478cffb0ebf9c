import {
  type Cancellation,
  type LangiumDocument,
  type LangiumDocuments,
  type TextDocument,
  URI,
  UriUtils,
} from 'langium';
import { DefaultDocumentUpdateHandler, type LangiumSharedServices } from 'langium/lsp';
import { type DidChangeWatchedFilesParams, FileChangeType, type TextDocumentChangeEvent } from 'vscode-languageserver';
import { isLibrary } from '../library/library.js';
import { unneeded } from '../workspace/unneeded.js';
import type { JoineryWorkspaceManager } from '../workspace/workspace-manager.js';
import type { ServerDocumentBuilder } from './document-builder.js';

/**
 * What counts is the text in the editor while a file is open, and the one on disk from the moment it is closed. News
 * of the disk about an open file changes nothing.
 */
export class JoineryDocumentUpdates extends DefaultDocumentUpdateHandler {
  private readonly documents: LangiumDocuments;
  private lastKey = 0;

  constructor(private readonly services: LangiumSharedServices) {
    super(services);
    this.documents = services.workspace.LangiumDocuments;
  }

  /**
   * A key by itself is followed at once. Of keys that come in a burst each waits a moment for the next one, which then
   * takes its place: reading a text cannot be broken off. Whatever else is asked for meanwhile keeps its turn.
   */
  override didChangeContent({ document }: TextDocumentChangeEvent<TextDocument>): void {
    const { WorkspaceManager, WorkspaceLock } = this.services.workspace;
    const builder = this.services.workspace.DocumentBuilder as ServerDocumentBuilder;
    const uri = URI.parse(document.uri);
    const now = performance.now();
    const burst = builder.expect(uri) && now - this.lastKey < BURST;
    this.lastKey = now;
    void WorkspaceManager.ready.then(() =>
      WorkspaceLock.write(async (token) => {
        if (burst && !token.isCancellationRequested) await pause(PAUSE, token);
        await builder.update([uri], [], token);
      }),
    );
  }

  didCloseDocument({ document }: TextDocumentChangeEvent<TextDocument>): void {
    const uri = URI.parse(document.uri);
    if (isLibrary(uri)) return;
    void this.isThere(uri).then((there) => {
      if (!this.isOpen(uri)) this.takeIn(there ? [uri] : [], there ? [] : [uri]);
    });
  }

  /**
   * Follows changes of files and folders, and lets go of whatever nobody needs any more: what is neither open nor in
   * the workspace, nor imported by such.
   */
  takeIn(changed: readonly URI[], deleted: readonly URI[] = []): void {
    const folders = this.services.workspace.WorkspaceManager as JoineryWorkspaceManager;
    const left = unneeded(this.documents, ({ uri }) => this.isOpen(uri) || folders.holds(uri)).map(({ uri }) => uri);
    const gone = unique([...deleted, ...left]);
    const stays = changed.filter((uri) => !gone.some((other) => UriUtils.equals(uri, other)));
    if (stays.length + gone.length > 0) this.fireDocumentUpdate(stays, gone);
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

/** Waits so many milliseconds, or until it is called off. */
function pause(milliseconds: number, token: Cancellation.CancellationToken): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, milliseconds);
    token.onCancellationRequested(() => {
      clearTimeout(timer);
      resolve();
    });
  });
}

const unique = (uris: readonly URI[]): URI[] => [...new Map(uris.map((uri) => [uri.toString(), uri])).values()];
