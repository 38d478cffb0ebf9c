import {
  type BuildOptions,
  type Cancellation,
  DefaultDocumentBuilder,
  DocumentState,
  isOperationCancelled,
  type LangiumDocument,
  type URI,
} from 'langium';
import { libraryText } from '../library/library.js';
import { importsOf } from '../scope/imports.js';
import { Unreadable } from './readable.js';

/** Builder that reads imported files when they are first asked for, so that one file opened alone has its shop. */
export class JoineryDocumentBuilder extends DefaultDocumentBuilder {
  /** Why imported files that are there could not be read when they were last wanted, by their addresses. */
  private readonly unreadable = new Map<string, string>();

  /** Why a file that is there could not be read, in words; undefined for one that was, or that is not there. */
  whyUnreadable(uri: URI): string | undefined {
    return this.unreadable.get(uri.toString());
  }

  protected override async buildDocuments(
    documents: LangiumDocument[],
    options: BuildOptions,
    cancelToken: Cancellation.CancellationToken,
  ): Promise<void> {
    this.prepareBuild(documents, options);
    const gone: LangiumDocument[] = [];
    await this.runCancelable(documents, DocumentState.Parsed, cancelToken, async (document) => {
      try {
        await this.langiumDocumentFactory.update(document, cancelToken);
      } catch (error) {
        if (isOperationCancelled(error)) throw error;
        gone.push(document);
      }
    });
    const present = documents.filter((document) => !gone.includes(document));
    const imported = await this.readImports(present, cancelToken);
    await this.buildRead([...present, ...imported], options, cancelToken);
    // A file can go between the news of its change and its being read: whatever imports it lacks it from now on.
    if (gone.length > 0)
      await this.update(
        [],
        gone.map(({ uri }) => uri),
        cancelToken,
      );
  }

  /** Builds documents that have been read, and whatever they import as well. */
  protected buildRead(
    documents: LangiumDocument[],
    options: BuildOptions,
    cancelToken: Cancellation.CancellationToken,
  ): Promise<void> {
    return super.buildDocuments(documents, options, cancelToken);
  }

  /** A name that stands for nothing can only come to stand for something through a change of what the file sees. */
  protected override shouldRelink(document: LangiumDocument, changedUris: Set<string>): boolean {
    return this.indexManager.isAffected(document, changedUris);
  }

  /** Reads what documents import, and what that imports, as far as it is not there yet. */
  private async readImports(
    documents: readonly LangiumDocument[],
    cancelToken: Cancellation.CancellationToken,
  ): Promise<LangiumDocument[]> {
    const read: LangiumDocument[] = [];
    const waiting = [...documents];
    for (const document of waiting) {
      for (const uri of importsOf(document)) {
        if (this.langiumDocuments.hasDocument(uri)) continue;
        const imported = await this.read(uri, cancelToken);
        if (imported === undefined) continue;
        read.push(imported);
        waiting.push(imported);
      }
    }
    return read;
  }

  /** A file that cannot be read is no document: the import that names it is reported where it stands. */
  private async read(uri: URI, cancelToken: Cancellation.CancellationToken): Promise<LangiumDocument | undefined> {
    this.unreadable.delete(uri.toString());
    try {
      const text = libraryText(uri) ?? (await this.fileSystemProvider.readFile(uri));
      if (!this.serviceRegistry.hasServices(uri)) return undefined;
      const document = await this.langiumDocumentFactory.fromString(text, uri, cancelToken);
      this.langiumDocuments.addDocument(document);
      return document;
    } catch (error) {
      if (isOperationCancelled(error)) throw error;
      if (error instanceof Unreadable) this.unreadable.set(uri.toString(), error.message);
      return undefined;
    }
  }
}
