import { EventEmitter, type Pseudoterminal } from 'vscode';
import { type CommandLine, type Run, typed } from './command-line.js';
import type { DryfitTask } from './definition.js';
import { wordsOf } from './definition.js';

const CALLED_WRONGLY = 2;
const INTERRUPT = '\x03';

/**
 * What a task shows while it runs: the command line's words, then what it prints; closing it ends the run.
 * @param ended told the code that the run ends with
 */
export function terminalFor(
  task: DryfitTask,
  folder: string,
  commandLine: CommandLine,
  ended?: (code: number) => void,
): Pseudoterminal {
  const written = new EventEmitter<string>();
  const closed = new EventEmitter<number>();
  // A terminal goes to the beginning of a line only if it is told to.
  const print = (text: string) => written.fire(text.replace(/\r?\n/g, '\r\n'));
  let run: Run | undefined;
  return {
    onDidWrite: written.event,
    onDidClose: closed.event,
    async open() {
      const words = wordsOf(task);
      if ('missing' in words) {
        print(`dryfit: this task cannot be run: ${words.missing}\n`);
        closed.fire(CALLED_WRONGLY);
        return;
      }
      print(`> ${typed(words)}\n\n`);
      run = commandLine(words, folder, print);
      const code = await run.ended;
      closed.fire(code);
      ended?.(code);
    },
    close: () => run?.stop(),
    handleInput(keys) {
      if (keys === INTERRUPT) run?.stop();
    },
  };
}
