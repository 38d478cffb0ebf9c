import { commands, env, FileType, tasks, UIKind, Uri, window, workspace } from 'vscode';
import type { FitStates } from '../fit-states.js';
import type { CommandLine } from '../tasks/command-line.js';
import { printTask, type Wanted } from '../tasks/provider.js';

/** The job of a file that is meant; asks where there are several, says so where there is none. */
export async function jobOf(uri: Uri, states: FitStates): Promise<string | undefined> {
  const jobs = states.of(uri.toString())?.jobs ?? [];
  if (jobs.length > 1) return window.showQuickPick(jobs, { title: 'Print Sheets', placeHolder: 'Of which job?' });
  if (jobs.length === 0)
    void window.showInformationMessage(
      'Dryfit: there is no job in this file to print sheets for; a job says how many of which cabinet are made.',
    );
  return jobs[0];
}

/** Writes sheets by the command line, in a terminal, and opens them; says why where that cannot be. */
export async function printSheets(uri: Uri, wanted: Wanted, commandLine: CommandLine | undefined): Promise<void> {
  const began = Date.now();
  let end: (code: number) => void = () => undefined;
  const ended = new Promise<number>((resolve) => {
    end = resolve;
  });
  const task = printTask(uri, wanted, commandLine, end);
  if (typeof task === 'string') return refused(task, uri, wanted.job);
  // The command line reads what lies on the disk.
  const document = workspace.textDocuments.find((one) => one.uri.toString() === uri.toString());
  if (document?.isDirty && !(await document.save())) return;
  await tasks.executeTask(task);
  // What is wrong with the file stands in the terminal, and nothing was written.
  if ((await ended) !== 0) return;
  const folder = workspace.getWorkspaceFolder(uri);
  const name = wanted.setUp === undefined ? 'sheets' : `set-up-${wanted.setUp}`;
  const sheets = folder && (await writtenSince(Uri.joinPath(folder.uri, 'tables'), `${name}.html`, began));
  if (sheets) await opened(sheets, wanted);
}

/** A file in the folder of a job's sheets, the one that has just been written. */
async function writtenSince(folder: Uri, file: string, began: number): Promise<Uri | undefined> {
  const found: { readonly uri: Uri; readonly at: number }[] = [];
  for (const [name, type] of await workspace.fs.readDirectory(folder)) {
    if (type !== FileType.Directory) continue;
    const uri = Uri.joinPath(folder, name, 'sheets', file);
    try {
      found.push({ uri, at: (await workspace.fs.stat(uri)).mtime });
    } catch {
      // A folder of tables or drawings.
    }
  }
  // A file system may round the time of a file down.
  return found.filter(({ at }) => at >= began - ROUNDED).sort((a, b) => b.at - a.at)[0]?.uri;
}

const ROUNDED = 2000;

/** Opens sheets where they can be printed: in the browser of the desk, if the file lies there. */
async function opened(sheets: Uri, { job, setUp }: Wanted): Promise<void> {
  const path = workspace.asRelativePath(sheets, false);
  const isHere = env.uiKind === UIKind.Desktop && env.remoteName === undefined;
  if (isHere && (await env.openExternal(sheets))) return;
  const what = setUp === undefined ? `the sheets of job ${job} are` : `set-up ${setUp} of job ${job} is`;
  const show = 'Show in Explorer';
  const chosen = await window.showInformationMessage(
    `Dryfit: ${what} in ${path} and, as PDF, beside it. Open one of them in a browser to print it.`,
    show,
  );
  if (chosen === show) await commands.executeCommand('revealInExplorer', sheets);
}

async function refused(why: string, uri: Uri, job: string): Promise<void> {
  const offer = workspace.isTrusted
    ? { title: 'Open Plan', command: 'dryfit.openPlan' }
    : { title: 'Manage Trust', command: 'workbench.trust.manage' };
  const chosen = await window.showInformationMessage(
    `Dryfit: no sheets were printed: ${why}. "Dryfit: Open Plan Beside" shows the set-ups anywhere.`,
    offer.title,
  );
  if (chosen === undefined) return;
  if (workspace.isTrusted) await commands.executeCommand(offer.command, uri, job);
  else await commands.executeCommand(offer.command);
}
