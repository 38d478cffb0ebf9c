import { fork } from 'node:child_process';
import type { CommandLine } from './command-line.js';

/** Exit code of a run that was stopped, as shells give it. */
const STOPPED = 130;

/**
 * The command line that the extension brings along, in a process of its own: it says what the editor says, whatever the
 * folder has installed, and nothing of the folder is run.
 * @param script path of its bundle
 */
export function ownCommandLine(script: string): CommandLine {
  return (words, folder, print) => {
    // The editor's own program is Node as well, once it is told so.
    const env = { ...process.env, ELECTRON_RUN_AS_NODE: '1' };
    const child = fork(script, words, { cwd: folder, env, silent: true });
    for (const stream of [child.stdout, child.stderr]) stream?.setEncoding('utf8').on('data', print);
    const ended = new Promise<number>((resolve) => {
      child.once('error', (error) => {
        print(`dryfit: the command line does not start: ${error.message}\n`);
        resolve(1);
      });
      // Not `exit`: what was printed last is still to be read then.
      child.once('close', (code) => resolve(code ?? STOPPED));
    });
    return { ended, stop: () => void child.kill() };
  };
}
