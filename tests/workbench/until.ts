export interface Asking {
  /** Makes ready for the next time. */
  readonly between?: () => Promise<unknown>;
}

/** How long something is tried again at most, ms; less than a scenario may take, so that its failure tells the reason. */
const PATIENCE = 60_000;

/** How long the effect of a key or a click is waited for before it is tried again, ms. */
export const SOON = { timeout: 6_000 } as const;

/**
 * Does something until it comes about: a hand whose key had no effect presses again. What is done has to look for its
 * effect and fail without it; the last failure is the one that is told.
 */
export async function until<T>(attempt: () => Promise<T>, { between }: Asking = {}): Promise<T> {
  for (const end = performance.now() + PATIENCE; ; ) {
    try {
      return await attempt();
    } catch (error) {
      if (performance.now() > end) throw error;
      await between?.();
    }
  }
}

/** Looks until what is seen is right; before a block's tests too, where `expect.poll` cannot be asked. */
export async function come<T>(
  look: () => Promise<T>,
  isRight: (seen: T) => boolean,
  { timeout }: { readonly timeout: number } = SOON,
): Promise<T> {
  for (const end = performance.now() + timeout; ; await new Promise((resolve) => setTimeout(resolve, 50))) {
    const seen = await look();
    if (isRight(seen)) return seen;
    if (performance.now() > end) throw new Error(`still seen after ${timeout} ms: ${JSON.stringify(seen)}`);
  }
}
