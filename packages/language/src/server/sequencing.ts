import { type Sequence, type SequenceOptions, type Sequencer, sequenceSetups } from '@dryfit/engine';
import { type Cancellation, interruptAndCheck, OperationCancelled } from 'langium';

/** Where orders are reckoned beside what the server does, so that a key need not wait for them. */
export interface Thread {
  /** One question at a time. */
  ask(cost: readonly (readonly number[])[], options: SequenceOptions): Promise<Sequence>;
  /** Ends it, whatever it is reckoning on. */
  end(): void;
}

/** @throws Error where none can be started */
export type StartThread = () => Thread;

/** Orders that are kept; many choices of settings come up again after each edit. */
const MOST_KEPT = 500;
/** So few set-ups, and the empty bench, are in order before a thread could be asked. */
const FEW = 12;
/** How long a thread is kept with nothing to reckon on, ms: it holds the solver. */
const IDLE = 60_000;

/**
 * Puts set-ups in order for plans that may be dropped again: on a thread of its own where one can be started, each order
 * once, and no longer in all than a reader waits. Where there is no thread the solver is left out: it gives way to nothing.
 */
export class Sequencing {
  private readonly kept = new Map<string, Sequence>();
  private idle: Thread | undefined;
  private goesToSleep: ReturnType<typeof setTimeout> | undefined;

  /** @param start absent where orders are to be reckoned here, solver and all */
  constructor(private start: StartThread | 'here' | undefined = 'here') {}

  /**
   * Orders for one plan.
   * @param budget ms for all of them; what comes after has a plain bound
   */
  for(
    token: Cancellation.CancellationToken,
    budget: number,
  ): { readonly sequence: Sequencer; readonly end: () => void } {
    let left = budget;
    let thread: Thread | undefined;
    const cancelled = token.onCancellationRequested(() => {
      thread?.end();
      thread = undefined;
    });
    return {
      sequence: async (cost, options = {}) => {
        await interruptAndCheck(token);
        const key = JSON.stringify([cost, options.precedences ?? [], options.cyclic ?? false]);
        const known = this.kept.get(key);
        if (known) return known;
        const began = performance.now();
        const limits =
          left > 0 ? { timeLimitMs: Math.min(left, options.timeLimitMs ?? left) } : { withoutSolver: true };
        const few = cost.length <= FEW;
        if (!few && this.start !== undefined) thread ??= this.take();
        const found = await this.reckon(
          few || this.start === undefined ? undefined : thread,
          cost,
          { ...options, ...limits },
          token,
        );
        left -= performance.now() - began;
        this.keep(key, found);
        return found;
      },
      end: () => {
        cancelled.dispose();
        if (thread) this.give(thread);
        thread = undefined;
      },
    };
  }

  private async reckon(
    thread: Thread | undefined,
    cost: readonly (readonly number[])[],
    options: SequenceOptions,
    token: Cancellation.CancellationToken,
  ): Promise<Sequence> {
    if (!thread) return sequenceSetups(cost, this.start === 'here' ? options : { ...options, withoutSolver: true });
    try {
      return await thread.ask(cost, options);
    } catch {
      if (token.isCancellationRequested) throw OperationCancelled;
      // It cannot be started, or has ended by itself: no other would fare better.
      this.start = undefined;
      return sequenceSetups(cost, { ...options, withoutSolver: true });
    }
  }

  private take(): Thread | undefined {
    clearTimeout(this.goesToSleep);
    const thread = this.idle;
    this.idle = undefined;
    if (thread || typeof this.start !== 'function') return thread;
    try {
      return this.start();
    } catch {
      this.start = undefined;
      return undefined;
    }
  }

  private give(thread: Thread): void {
    if (this.idle || this.start === undefined) {
      thread.end();
      return;
    }
    this.idle = thread;
    this.goesToSleep = setTimeout(() => {
      this.idle?.end();
      this.idle = undefined;
    }, IDLE);
  }

  /** Only what a longer time would not better is kept: a bound that the time ran out on is sought anew. */
  private keep(key: string, found: Sequence): void {
    if (!found.proven) return;
    this.kept.set(key, found);
    for (const oldest of this.kept.keys()) if (this.kept.size > MOST_KEPT) this.kept.delete(oldest);
  }
}
