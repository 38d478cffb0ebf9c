/** Numbers in [0, 1), the same ones for the same seed (xorshift, Marsaglia 2003). */
export function generator(seed: number): () => number {
  let state = (seed ^ 0x9e3779b9) >>> 0 || 1;
  const next = () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 8; i++) next();
  return next;
}

/** A whole number from 0 up to but not including `below`. */
export const pick = (random: () => number, below: number): number => Math.floor(random() * below);

/** The list in another order, decided by the seed. */
export function shuffled<T>(list: readonly T[], seed: number): T[] {
  const random = generator(seed);
  const result = [...list];
  for (let i = result.length - 1; i > 0; i--) {
    const j = pick(random, i + 1);
    [result[i], result[j]] = [result[j] as T, result[i] as T];
  }
  return result;
}
