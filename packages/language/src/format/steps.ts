/** Work in steps, between which whoever does it may look after something else, or leave off. */
export type Steps<T> = Generator<undefined, T>;

/** All steps at once. */
export function toEnd<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
