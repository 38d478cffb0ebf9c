import { sequenceSetups } from '@dryfit/engine';
import type { Answer, Ask } from './thread.js';

/*
 * A thread that puts set-ups in order, beside a server in Node or in a browser's worker. It lies beside the solver, which
 * it loads when an order calls for it.
 */

async function answer({ cost, options }: Ask): Promise<Answer> {
  try {
    return { sequence: await sequenceSetups(cost, options) };
  } catch (error) {
    return { error: String(error) };
  }
}

if (typeof process === 'undefined') {
  const worker = self as DedicatedWorkerGlobalScope;
  worker.onmessage = async ({ data }: MessageEvent<Ask>) => worker.postMessage(await answer(data));
} else {
  const { parentPort } = await import('node:worker_threads');
  parentPort?.on('message', async (ask) => parentPort?.postMessage(await answer(ask as Ask)));
}
