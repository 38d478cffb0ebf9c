/** A run of the command line: how to end it, and the code it ends with. */
export interface Run {
  readonly ended: Promise<number>;
  readonly stop: () => void;
}

/**
 * Runs the command line in a folder of the disk and tells what it prints as it comes. An editor that runs in a browser
 * has none: it can start no program.
 */
export type CommandLine = (words: readonly string[], folder: string, print: (text: string) => void) => Run;

/** The words as one would type them. */
export function typed(words: readonly string[]): string {
  return ['dryfit', ...words].map((word) => (/^[\w./:=-]+$/.test(word) ? word : JSON.stringify(word))).join(' ');
}
