const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * While a signal has a listener Node hears it only between turns of its event loop, so work that gives no turn
 * away is done whole; the signal then ends the process as it would have.
 */
export async function uninterrupted<T>(work: () => T): Promise<T> {
  let heard: NodeJS.Signals | undefined;
  const note = (signal: NodeJS.Signals) => {
    heard = signal;
  };
  for (const signal of SIGNALS) process.on(signal, note);
  try {
    return work();
  } finally {
    // The first turn may be the rest of this one; what has arrived meanwhile is heard by the end of the second.
    for (let turn = 0; turn < 2; turn += 1) await new Promise((next) => setImmediate(next));
    for (const signal of SIGNALS) process.off(signal, note);
    if (heard !== undefined) process.kill(process.pid, heard);
  }
}
