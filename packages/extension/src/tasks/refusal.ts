/** Where a task is to be run, as far as it matters to whether it can be. */
export interface Place {
  /** Whether the folder is trusted. */
  readonly trusted: boolean;
  /** Whether the editor can start a program. */
  readonly programs: boolean;
  /** Scheme of the folder's address; undefined if the file lies in no folder that is open. */
  readonly scheme: string | undefined;
}

/** Why no task can run there, as the rest of a sentence; undefined if it can. */
export function refusalAt({ trusted, programs, scheme }: Place): string | undefined {
  if (!trusted) return 'this folder is not trusted, and the editor runs no task in such a one';
  if (!programs) return 'this editor runs in a browser, where the command line cannot be started';
  if (scheme === undefined) return 'the file lies in none of the folders that are open';
  if (scheme !== 'file') return 'the folder lies on no disk, and the command line reads and writes a disk';
  return undefined;
}
