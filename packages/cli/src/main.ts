import { reasonOf } from './input/reason.js';
import type { Io, Stream } from './io.js';
import { MISUSE } from './io.js';
import { run } from './run.js';
import { uninterrupted } from './uninterrupted.js';

/** The outermost of the command line: joins it to the process, and is the only place that ends it. */

// A reader that has seen enough (`dryfit check | head`) closes the pipe: that is no failure of ours. Anything else,
// a full disk above all, leaves half of what was printed, and the exit code has to say so.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    if (stream === process.stdout) process.stderr.write(`dryfit: cannot print: ${reasonOf(error)}\n`);
    process.exit(MISUSE);
  });
}

const stream = (to: NodeJS.WriteStream): Stream => ({
  write: (text) => {
    to.write(text);
  },
  isTerminal: to.isTTY === true,
});

const io: Io = {
  out: stream(process.stdout),
  err: stream(process.stderr),
  cwd: process.cwd(),
  env: process.env,
  uninterrupted,
};

// Not process.exit: what is still on its way into a pipe is to arrive.
try {
  process.exitCode = await run(process.argv.slice(2), io);
} catch (error) {
  io.err.write(
    `dryfit: this is a fault of dryfit itself; please report it with the file it happened on\n${(error as Error).stack}\n`,
  );
  process.exitCode = MISUSE;
}
