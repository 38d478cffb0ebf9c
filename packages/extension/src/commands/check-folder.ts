import { commands, ProgressLocation, window, workspace } from 'vscode';

/** Has every file of the folder worked out, and opens the list of what is wrong. */
export async function checkFolder(): Promise<void> {
  const files = await workspace.findFiles('**/*.joinery', '**/node_modules/**');
  if (files.length === 0) {
    void window.showInformationMessage('Dryfit: there is no .joinery file in this folder.');
    return;
  }
  const title = 'Dryfit: checking';
  await window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    async (tell, stop) => {
      for (const [at, file] of files.entries()) {
        if (stop.isCancellationRequested) return;
        tell.report({ message: workspace.asRelativePath(file), increment: at === 0 ? 0 : 100 / files.length });
        // What is open is worked out; a file that cannot be read stays as it is.
        await Promise.resolve(workspace.openTextDocument(file)).catch(() => undefined);
      }
    },
  );
  await commands.executeCommand('workbench.actions.view.problems');
}
