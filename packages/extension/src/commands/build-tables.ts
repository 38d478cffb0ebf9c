import { tasks, window, workspace } from 'vscode';
import { buildTask } from '../tasks/provider.js';

/** Writes the tables of the file at hand by the command line, in a terminal. */
export async function buildTables(): Promise<void> {
  const document = window.activeTextEditor?.document;
  const task = await buildTask();
  if (task) {
    // The command line reads what lies on the disk.
    if (!(await document?.save())) return;
    await tasks.executeTask(task);
    return;
  }
  const why = !workspace.isTrusted
    ? 'this folder is not trusted, and building runs a program in it'
    : document && workspace.getWorkspaceFolder(document.uri)?.uri.scheme === 'file'
      ? 'no cabinet is open'
      : 'the file lies in no folder on a disk, and the tables are written by the command line';
  void window.showInformationMessage(
    `Dryfit: no tables were built: ${why}. "Dryfit: Open Slot Table" shows and copies the slots anywhere.`,
  );
}
