import { type Disposable, type Task, TaskScope, tasks, window, workspace } from 'vscode';
import { languageId } from '../client-options.js';
import { type DryfitTask, taskFor } from './definition.js';
import { makeTask } from './tasks.js';

/** Offers to check each folder and to build the file at hand, and completes what stands in tasks.json. */
export function registerTasks(): Disposable {
  return tasks.registerTaskProvider('dryfit', {
    provideTasks: async () => {
      const folders = workspace.workspaceFolders ?? [];
      const checks = folders.map((folder) => makeTask({ type: 'dryfit', command: 'check' }, folder));
      return (await Promise.all([...checks, buildTask()])).filter((task) => task !== undefined);
    },
    resolveTask: async (task: Task) => {
      const folder = folderOf(task);
      const made = folder && (await makeTask(task.definition as DryfitTask, folder));
      // The definition has to be the very one that was asked for.
      if (made) made.definition = task.definition;
      return made;
    },
  });
}

/** Builds the tables of the file at hand; undefined if that is no cabinet of a folder where tasks run. */
export async function buildTask(): Promise<Task | undefined> {
  const document = window.activeTextEditor?.document;
  const folder = document && workspace.getWorkspaceFolder(document.uri);
  if (!folder || document.languageId !== languageId) return undefined;
  return makeTask(taskFor('build', workspace.asRelativePath(document.uri, false)), folder);
}

function folderOf({ scope }: Task) {
  return typeof scope === 'object'
    ? scope
    : scope === TaskScope.Workspace
      ? workspace.workspaceFolders?.[0]
      : undefined;
}
