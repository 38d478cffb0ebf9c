import type { Thread } from './sequencing.js';
import { type Answer, threadOver } from './thread.js';

/**
 * A worker of a browser. A script from another address than the page's may not be started as a worker, but may be
 * imported by one that the page itself has made.
 * @param script address of its bundle
 */
export function browserThread(script: string): Thread {
  return threadOver((answered, gone) => {
    // What is asked before the script has come is put to it then.
    const importing = `const early = []; self.onmessage = (event) => early.push(event);
import(${JSON.stringify(script)}).then(
  () => early.forEach((event) => self.onmessage(event)),
  (error) => postMessage({ error: String(error) }),
);`;
    const address = URL.createObjectURL(new Blob([importing], { type: 'text/javascript' }));
    const worker = new Worker(address);
    worker.onmessage = ({ data }: MessageEvent<Answer>) => answered(data);
    worker.onerror = ({ message }) => gone(new Error(message));
    return {
      send: (ask) => worker.postMessage(ask),
      end() {
        worker.terminate();
        URL.revokeObjectURL(address);
      },
    };
  });
}
