import { CustomExecution, Task, TaskGroup, type WorkspaceFolder } from 'vscode';
import type { CommandLine } from './command-line.js';
import { type DryfitTask, titleOf } from './definition.js';
import { terminalFor } from './terminal.js';

/** A task that runs the command line in a folder of the disk. */
export function makeTask(definition: DryfitTask, folder: WorkspaceFolder, commandLine: CommandLine): Task {
  const terminal = new CustomExecution(async () => terminalFor(definition, folder.uri.fsPath, commandLine));
  const task = new Task({ ...definition }, folder, titleOf(definition), 'dryfit', terminal, '$dryfit');
  task.group = definition.command === 'check' ? TaskGroup.Test : TaskGroup.Build;
  return task;
}
