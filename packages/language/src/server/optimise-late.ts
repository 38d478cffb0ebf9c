import { setFlagsFromString } from 'node:v8';

/**
 * Lets Node 20 compile for speed only what runs for long. Whoever opens a file waits for code that runs for the first
 * time, and a compiler that takes it up at once competes with it for the processor: four tenths of all the work of
 * opening a file, and nothing gained by it. Later versions wait of their own accord, and know no such setting.
 */
export function optimiseLate(): void {
  if (Number.parseInt(process.versions.node, 10) < 22) setFlagsFromString(`--interrupt-budget=${8 * USUAL}`);
}

/** Bytes of code that a function runs in Node 20 before it is thought worth compiling. */
const USUAL = 67_584;
