import { CHECK_WORKSPACE, type WorkspaceChecked } from '@dryfit/language/protocol';
import { commands, ProgressLocation, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Has every file of the folder worked out, opens the list of what is wrong, and says what was found. */
export async function checkFolder(client: BaseLanguageClient): Promise<void> {
  const title = 'Dryfit: checking the folder';
  const checked = await window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    async (_tell, stop) => {
      try {
        return await client.sendRequest<WorkspaceChecked>(CHECK_WORKSPACE, stop);
      } catch (error) {
        if (!stop.isCancellationRequested)
          void window.showErrorMessage(`Dryfit: the folder was not checked: ${reason(error)}`);
        return undefined;
      }
    },
  );
  if (!checked) return;
  const { files, errors, warnings } = checked;
  if (errors + warnings > 0) await commands.executeCommand('workbench.actions.view.problems');
  window.setStatusBarMessage(
    `Dryfit: ${many(files, 'file')} checked, ${many(errors, 'error')}, ${many(warnings, 'warning')}`,
    10_000,
  );
}

const many = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
const reason = (error: unknown): string => (error instanceof Error ? error.message : String(error));
