import { interruptAndCheck } from 'langium';
import type { CancellationToken } from 'vscode-languageserver-protocol';
import { isLibrary } from '../library/library.js';
import type { ServerDocumentBuilder } from './document-builder.js';
import { CHECK_WORKSPACE, type WorkspaceChecked } from './protocol.js';
import type { JoineryServerServices } from './services.js';

/** Works out the whole workspace when a client asks for it, and only then. */
export function answerWorkspaceCheck({ shared, editor }: JoineryServerServices): void {
  const { LangiumDocuments, WorkspaceLock, WorkspaceManager } = shared.workspace;
  const builder = shared.workspace.DocumentBuilder as ServerDocumentBuilder;
  shared.lsp.Connection?.onRequest(CHECK_WORKSPACE, async (...given: unknown[]): Promise<WorkspaceChecked> => {
    // The token comes last, with parameters or without.
    const asked = given.at(-1) as CancellationToken;
    await WorkspaceManager.ready;
    const counts = { files: 0, errors: 0, warnings: 0 };
    for (const document of LangiumDocuments.all.filter(({ uri }) => !isLibrary(uri)).toArray()) {
      await interruptAndCheck(asked);
      builder.attention.give(document);
      await WorkspaceLock.write((token) => builder.build([document], { validation: true }, token));
      const findings = editor.Examinations.of(document).findings;
      counts.files += 1;
      counts.errors += findings.filter(({ severity }) => severity === 'error').length;
      counts.warnings += findings.filter(({ severity }) => severity === 'warning').length;
    }
    return counts;
  });
}
