/**
 * Asks for something again and again, never twice at once: what comes up while an answer is awaited is one more
 * question after it. Nothing is asked while nobody looks.
 */
export class Asking<T> {
  private awaited = false;
  private wanted = false;
  private looking = false;
  private over = false;

  constructor(
    private readonly ask: () => Promise<T>,
    private readonly take: (answer: T) => void,
    private readonly fail: (error: unknown) => void,
  ) {}

  /** There may be something new. */
  want(): void {
    this.wanted = true;
    void this.go();
  }

  /** Whether somebody looks. */
  look(looking: boolean): void {
    this.looking = looking;
    void this.go();
  }

  end(): void {
    this.over = true;
  }

  private async go(): Promise<void> {
    if (this.awaited || !this.wanted || !this.looking || this.over) return;
    this.wanted = false;
    this.awaited = true;
    try {
      const answer = await this.ask();
      if (!this.over) this.take(answer);
    } catch (error) {
      if (!this.over) this.fail(error);
    } finally {
      this.awaited = false;
    }
    await this.go();
  }
}
