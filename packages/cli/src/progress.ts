import type { Stream } from './io.js';

const QUIET_MS = 500;
const STEP_MS = 100;
/** So many files take long enough to be told of beforehand. */
const MANY = 50;

/** A line of progress on a terminal, shown once the work has gone on for half a second, and wiped at the end. */
export class Progress {
  private shown = 0;
  private last: number;

  constructor(
    private readonly stream: Stream,
    private readonly now: () => number = Date.now,
  ) {
    this.last = now() + QUIET_MS - STEP_MS;
  }

  /** Says at once that many files are being read, before there is anything to count. */
  start(files: number): void {
    if (files >= MANY) this.show(`reading ${files} files`);
  }

  /** Says how far the work is: "checked 120 of 800 files". */
  report(done: number, of: number): void {
    if (this.now() - this.last < STEP_MS) return;
    this.last = this.now();
    this.show(`checked ${done} of ${of} files`);
  }

  private show(text: string): void {
    if (!this.stream.isTerminal) return;
    this.stream.write(`\r${text.padEnd(this.shown)}`);
    this.shown = Math.max(this.shown, text.length);
  }

  /** Wipes the line, so that what is printed next starts at its beginning. */
  done(): void {
    if (this.shown > 0) this.stream.write(`\r${' '.repeat(this.shown)}\r`);
    this.shown = 0;
  }
}
