import type { Sequence, SequenceOptions } from '@dryfit/engine';
import type { Thread } from './sequencing.js';

/** What a thread is asked, and what it answers; both as structured clones. */
export interface Ask {
  readonly cost: readonly (readonly number[])[];
  readonly options: SequenceOptions;
}
export type Answer = { readonly sequence: Sequence } | { readonly error: string };

/** A thread as far as it can be talked to, whatever kind it is. */
export interface Line {
  send(ask: Ask): void;
  end(): void;
}

/**
 * A thread that answers questions one at a time; when it is ended, or ends, the question under way fails.
 * @param open starts it, and says what is to be called with its answers and when it is gone
 */
export function threadOver(open: (answered: (answer: Answer) => void, gone: (why: Error) => void) => Line): Thread {
  let waiting: { give(sequence: Sequence): void; fail(error: Error): void } | undefined;
  const settle = (answer: Answer) => {
    const asked = waiting;
    waiting = undefined;
    if ('error' in answer) asked?.fail(new Error(answer.error));
    else asked?.give(answer.sequence);
  };
  let over: Error | undefined;
  const gone = (why: Error) => {
    over ??= why;
    settle({ error: why.message });
  };
  const line = open(settle, gone);
  return {
    ask: (cost, options) =>
      new Promise<Sequence>((give, fail) => {
        if (over) return fail(over);
        waiting = { give, fail };
        line.send({ cost, options });
      }),
    end() {
      line.end();
      gone(new Error('the thread was ended'));
    },
  };
}
