/** A question under way; `cancel` says that its answer is not waited for any more. */
export interface Question<T> {
  readonly answer: Promise<T>;
  cancel(): void;
}

/**
 * Asks for something again and again, never twice at once: what comes up while an answer is awaited cancels that
 * question, and is one more after it. An answer that comes all the same is taken, since it is newer than what there
 * was. Nothing is asked while nobody looks.
 */
export class Asking<T> {
  private awaited: Question<T> | undefined;
  private wanted = false;
  private looking = false;
  private over = false;

  constructor(
    private readonly ask: () => Question<T>,
    private readonly take: (answer: T) => void,
    private readonly fail: (error: unknown) => void,
  ) {}

  /** There may be something new. */
  want(): void {
    this.wanted = true;
    this.awaited?.cancel();
    void this.go();
  }

  /** Whether somebody looks. */
  look(looking: boolean): void {
    this.looking = looking;
    void this.go();
  }

  /** Whoever was asked is gone, and may never answer. */
  forget(): void {
    this.awaited = undefined;
  }

  end(): void {
    this.over = true;
    this.awaited?.cancel();
  }

  private async go(): Promise<void> {
    if (this.awaited || !this.wanted || !this.looking || this.over) return;
    this.wanted = false;
    let question: Question<T> | undefined;
    try {
      question = this.ask();
      this.awaited = question;
      const answer = await question.answer;
      if (this.awaits(question)) this.take(answer);
    } catch (error) {
      if (this.awaits(question)) this.fail(error);
    }
    if (this.awaited !== question) return;
    this.awaited = undefined;
    await this.go();
  }

  private awaits(question: Question<T> | undefined): boolean {
    return !this.over && this.awaited === question;
  }
}
