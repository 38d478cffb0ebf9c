import { URI } from 'langium';
import type { JoineryWorkspaceManager } from '../workspace/workspace-manager.js';
import type { JoineryDocumentUpdates } from './document-updates.js';
import type { JoineryLanguageServer } from './language-server.js';
import type { JoineryServerServices } from './services.js';

/** Reads the folders that are added to a workspace while the server runs, and lets go of those that are taken out. */
export function followFolders({ shared }: JoineryServerServices): void {
  const { Connection, LanguageServer, DocumentUpdateHandler } = shared.lsp;
  const folders = shared.workspace.WorkspaceManager as JoineryWorkspaceManager;
  const updates = DocumentUpdateHandler as JoineryDocumentUpdates;
  LanguageServer.onInitialized(() => {
    if (!Connection || !(LanguageServer as JoineryLanguageServer).client.workspace?.workspaceFolders) return;
    Connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      folders.follow(added, removed);
      updates.takeIn(added.map(({ uri }) => URI.parse(uri)));
    });
  });
}
