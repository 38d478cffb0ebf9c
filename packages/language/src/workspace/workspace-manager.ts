import {
  DefaultWorkspaceManager,
  type LangiumDocument,
  type LangiumDocumentFactory,
  type LangiumSharedCoreServices,
  type Stream,
  type URI,
  UriUtils,
  type WorkspaceFolder,
} from 'langium';
import { libraryNames, libraryText, libraryUri } from '../library/library.js';

/** Loads the built-in library before the folders of a workspace: it is part of the program, no file system needed. */
export class JoineryWorkspaceManager extends DefaultWorkspaceManager {
  private readonly factory: LangiumDocumentFactory;

  constructor(services: LangiumSharedCoreServices) {
    super(services);
    this.factory = services.workspace.LangiumDocumentFactory;
  }

  /** Folders have come to the workspace, or left it. */
  follow(added: readonly WorkspaceFolder[], removed: readonly WorkspaceFolder[]): void {
    const gone = new Set(removed.map(({ uri }) => uri));
    this.folders = [...(this.folders ?? []).filter(({ uri }) => !gone.has(uri)), ...added];
  }

  /** A file that cannot be read keeps no other from being read: it is no document, and what imports it says so. */
  protected override async loadWorkspaceDocuments(
    uris: Stream<URI>,
    collector: (document: LangiumDocument) => void,
  ): Promise<void> {
    const read = async (uri: URI): Promise<LangiumDocument | undefined> => {
      try {
        return await this.langiumDocuments.getOrCreateDocument(uri);
      } catch {
        return undefined;
      }
    };
    const documents = await Promise.all(uris.map(read));
    for (const document of documents) if (document) collector(document);
  }

  /** True for what lies in a folder of the workspace. */
  holds(uri: URI): boolean {
    return (this.folders ?? []).some((folder) => UriUtils.contains(folder.uri, uri));
  }

  protected override async loadAdditionalDocuments(
    folders: WorkspaceFolder[],
    collector: (document: LangiumDocument) => void,
  ): Promise<void> {
    await super.loadAdditionalDocuments(folders, collector);
    for (const name of libraryNames) {
      const uri = libraryUri(name);
      if (!this.langiumDocuments.hasDocument(uri)) collector(this.factory.fromString(libraryText(uri) ?? '', uri));
    }
  }
}
