import { ShellExecution, ShellQuoting, Task, TaskGroup, Uri, type WorkspaceFolder, workspace } from 'vscode';
import { type DryfitTask, titleOf, wordsOf } from './definition.js';

/** A task that runs the command line in a folder; undefined where none can run, or if the task is not whole. */
export async function makeTask(definition: DryfitTask, folder: WorkspaceFolder): Promise<Task | undefined> {
  const words = wordsOf(definition);
  if ('missing' in words || !canRun(folder)) return undefined;
  const quoted = (value: string) => ({ value, quoting: ShellQuoting.Strong });
  const run = new ShellExecution(quoted(await commandOf(folder)), words.map(quoted), { cwd: folder.uri.fsPath });
  const task = new Task({ ...definition }, folder, titleOf(definition), 'dryfit', run, '$dryfit');
  task.group = definition.command === 'check' ? TaskGroup.Test : TaskGroup.Build;
  return task;
}

/** Only a trusted folder on a disk has a command line to run in it. */
export function canRun({ uri }: WorkspaceFolder): boolean {
  return workspace.isTrusted && uri.scheme === 'file';
}

/** The command line that a folder has installed, or else the one on the path. */
async function commandOf({ uri }: WorkspaceFolder): Promise<string> {
  const bin = Uri.joinPath(uri, 'node_modules/.bin');
  // Windows runs the second of the two that npm writes there, and finds it by the name of the first.
  const own = Uri.joinPath(bin, 'dryfit');
  return workspace.fs.stat(own).then(
    () => own.fsPath,
    () => 'dryfit',
  );
}
