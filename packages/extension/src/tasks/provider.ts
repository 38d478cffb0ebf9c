import {
  type Disposable,
  type Task,
  TaskScope,
  tasks,
  type Uri,
  type WorkspaceFolder,
  window,
  workspace,
} from 'vscode';
import { languageId } from '../client-options.js';
import type { CommandLine } from './command-line.js';
import { type DryfitTask, sheetsTask, taskFor } from './definition.js';
import { refusalAt } from './refusal.js';
import { makeTask } from './tasks.js';

/** Offers to check each folder and to build the file at hand, and completes what stands in tasks.json. */
export function registerTasks(commandLine: CommandLine | undefined): Disposable {
  return tasks.registerTaskProvider('dryfit', {
    provideTasks: () => {
      const check: DryfitTask = { type: 'dryfit', command: 'check' };
      const checks = (workspace.workspaceFolders ?? []).map((folder) => taskIn(folder, check, commandLine));
      return [...checks, buildTask(commandLine)].filter((task) => typeof task === 'object');
    },
    resolveTask: (task: Task) => {
      const folder = folderOf(task);
      const made = folder && taskIn(folder, task.definition as DryfitTask, commandLine);
      if (typeof made !== 'object') return undefined;
      // The definition has to be the very one that was asked for.
      made.definition = task.definition;
      return made;
    },
  });
}

/** Builds the tables of the file at hand; or why not, in words. */
export function buildTask(commandLine: CommandLine | undefined): Task | string {
  const document = window.activeTextEditor?.document;
  if (document?.languageId !== languageId) return 'no cabinet is open';
  const definition = taskFor('build', workspace.asRelativePath(document.uri, false));
  return taskIn(workspace.getWorkspaceFolder(document.uri), definition, commandLine);
}

/** The sheets of a job, or those of one of its set-ups, counted from 1. */
export interface Wanted {
  readonly job: string;
  readonly setUp?: number | undefined;
}

/** Writes sheets, or why not, in words. @param ended told the code that the command line ends with */
export function printTask(
  uri: Uri,
  { job, setUp }: Wanted,
  commandLine: CommandLine | undefined,
  ended: (code: number) => void,
): Task | string {
  const definition = sheetsTask(workspace.asRelativePath(uri, false), job, setUp);
  return taskIn(workspace.getWorkspaceFolder(uri), definition, commandLine, ended);
}

function taskIn(
  folder: WorkspaceFolder | undefined,
  definition: DryfitTask,
  commandLine: CommandLine | undefined,
  ended?: (code: number) => void,
): Task | string {
  const scheme = folder?.uri.scheme;
  const refusal = refusalAt({ trusted: workspace.isTrusted, programs: commandLine !== undefined, scheme });
  if (refusal !== undefined) return refusal;
  return folder && commandLine ? makeTask(definition, folder, commandLine, ended) : 'there is no folder to run it in';
}

function folderOf({ scope }: Task): WorkspaceFolder | undefined {
  return typeof scope === 'object'
    ? scope
    : scope === TaskScope.Workspace
      ? workspace.workspaceFolders?.[0]
      : undefined;
}
