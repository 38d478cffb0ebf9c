import { CustomExecution, Task, TaskGroup, type WorkspaceFolder } from 'vscode';
import type { CommandLine } from './command-line.js';
import { type DryfitTask, titleOf } from './definition.js';
import { terminalFor } from './terminal.js';

/** A task that runs the command line in a folder of the disk. @param ended told the code that it ends with */
export function makeTask(
  definition: DryfitTask,
  folder: WorkspaceFolder,
  commandLine: CommandLine,
  ended?: (code: number) => void,
): Task {
  const terminal = new CustomExecution(async () => terminalFor(definition, folder.uri.fsPath, commandLine, ended));
  const task = new Task({ ...definition }, folder, titleOf(definition), 'dryfit', terminal, '$dryfit');
  task.group = definition.command === 'check' ? TaskGroup.Test : TaskGroup.Build;
  return task;
}
