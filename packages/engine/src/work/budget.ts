import type { Sequence, SequenceOptions, Sequencer } from '../sequence/sequence.js';

/** How long one order may be reckoned on. */
export type Share = Pick<SequenceOptions, 'timeLimitMs' | 'quick'>;

/** One time for all the orders that are reckoned for a plan: what is left is shared out to those still to be found. */
export class Budget {
  private readonly began: number;
  private stopped = false;

  /**
   * @param limitMs for all of it
   * @param clock milliseconds from any start; one that stands still lets each order have its share of the whole
   */
  constructor(
    private readonly limitMs: number,
    private readonly clock: () => number = () => 0,
  ) {
    this.began = clock();
  }

  /** Whether nothing is left; what is still to be found is then found at once, with a plain bound. */
  get isSpent(): boolean {
    return this.clock() - this.began >= this.limitMs;
  }

  /** Whether something could not be proven since the time was up. */
  get ranOut(): boolean {
    return this.stopped;
  }

  /**
   * An order, found in the share of one.
   * @param ofSo how many are still to be found, this one counted
   */
  async order(
    sequence: Sequencer,
    cost: readonly (readonly number[])[],
    options: SequenceOptions,
    ofSo: number,
  ): Promise<Sequence> {
    const found = await sequence(cost, { ...options, ...this.share(ofSo) });
    if (found.stopped) this.stopped = true;
    return found;
  }

  /** To be told where something is left out, since nothing is left. */
  leaveOut(): void {
    this.stopped = true;
  }

  private share(ofSo: number): Share {
    const left = this.limitMs - (this.clock() - this.began);
    return left <= 0 ? { quick: true } : { timeLimitMs: left / Math.max(1, ofSo) };
  }
}
