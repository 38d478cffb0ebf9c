/** A task as it stands in tasks.json: what the command line is called with. */
export interface DryfitTask {
  readonly type: 'dryfit';
  readonly command: (typeof COMMANDS)[number];
  /** The file or folder, from the folder the task runs in; needed by all commands but `check`. */
  readonly file?: string;
  /** Further words for the command line. */
  readonly args?: readonly string[];
}

export const COMMANDS = ['check', 'build', 'draw', 'sheets'] as const;

/** The words after `dryfit`, or what is missing. */
export function wordsOf(task: DryfitTask): readonly string[] | { readonly missing: string } {
  const { command, file, args = [] } = task;
  if (!COMMANDS.includes(command)) return { missing: `"command" has to be ${COMMANDS.join(', ')}` };
  if (file === undefined && command !== 'check') return { missing: `"${command}" needs a "file"` };
  // A name that begins with a dash would be read as an option.
  const path = file?.startsWith('-') ? `./${file}` : file;
  return [command, ...(path === undefined ? [] : [path]), ...args];
}

/** What is written into the folder `tables` or `drawings` unless a task says otherwise. */
export function taskFor(command: 'build' | 'draw', file: string): DryfitTask {
  return { type: 'dryfit', command, file, args: ['--out', command === 'build' ? 'tables' : 'drawings'] };
}

/**
 * Printed sheets of a job go where a cabinet's tables go, each into a folder of its own.
 * @param setUp the one that is wanted, from 1; all of them unless told
 */
export function sheetsTask(file: string, job: string, setUp?: number): DryfitTask {
  const one = setUp === undefined ? [] : ['--set-up', String(setUp)];
  return { type: 'dryfit', command: 'sheets', file, args: [job, '--out', 'tables', ...one] };
}

/** Title of a task in the list of tasks. */
export function titleOf({ command, file }: DryfitTask): string {
  return file === undefined ? `${command} all` : `${command} ${file}`;
}
