import { commands, tasks, window, workspace } from 'vscode';
import type { CommandLine } from '../tasks/command-line.js';
import { buildTask } from '../tasks/provider.js';

/** Writes the tables of the file at hand by the command line, in a terminal; says why where that cannot be. */
export async function buildTables(commandLine: CommandLine | undefined): Promise<void> {
  const task = buildTask(commandLine);
  if (typeof task === 'object') {
    // The command line reads what lies on the disk.
    if (await window.activeTextEditor?.document.save()) await tasks.executeTask(task);
    return;
  }
  const offer = workspace.isTrusted
    ? { title: 'Open Slot Table', command: 'dryfit.openSlotTable' }
    : { title: 'Manage Trust', command: 'workbench.trust.manage' };
  const chosen = await window.showInformationMessage(
    `Dryfit: no tables were built: ${task}. "Dryfit: Open Slot Table" shows and copies the slots anywhere.`,
    offer.title,
  );
  if (chosen !== undefined) await commands.executeCommand(offer.command);
}
