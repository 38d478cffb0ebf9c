/** Everything a command touches of the outside but files: where it prints, from where, and to what. */
export interface Io {
  readonly out: Stream;
  readonly err: Stream;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Does work that is not to be stopped half-way by a signal; the work must not wait for anything. */
  readonly uninterrupted: <T>(work: () => T) => Promise<T>;
}

export interface Stream {
  readonly write: (text: string) => void;
  readonly isTerminal: boolean;
}

/** Exit codes, the same for every command. */
export const CLEAN = 0;
export const ERRORS = 1;
export const MISUSE = 2;

/** The command was called wrongly, or its input cannot be read: said in one line, exit code 2. */
export class Misuse extends Error {}
