import { Worker } from 'node:worker_threads';
import type { Thread } from './sequencing.js';
import { type Answer, threadOver } from './thread.js';

/** A thread of Node. @param script path of its bundle */
export function nodeThread(script: string): Thread {
  return threadOver((answered, gone) => {
    const worker = new Worker(script);
    // A server that has nothing else to do may end.
    worker.unref();
    worker.on('message', (answer) => answered(answer as Answer));
    worker.on('error', gone);
    worker.on('exit', (code) => gone(new Error(`the thread ended with ${code}`)));
    return { send: (ask) => worker.postMessage(ask), end: () => void worker.terminate() };
  });
}
