/** Lengths drawn from a list of rolls, each from 0 to 9,999; a list that is used up goes on with middling ones. */
export class Dice {
  private next = 0;

  constructor(private readonly rolls: readonly number[]) {}

  /** A length between two others, to the thousandth of a millimetre. */
  between(least: number, most: number): number {
    const roll = this.rolls[this.next++] ?? 5000;
    return Math.round((least + ((most - least) * roll) / 9999) * 1000) / 1000;
  }

  one<T>(of: readonly T[]): T {
    const roll = this.rolls[this.next++] ?? 5000;
    return of[Math.min(of.length - 1, Math.floor((roll / 10_000) * of.length))] as T;
  }
}

/** A length as a spec writes it. */
export const mm = (length: number): string => {
  const text = length.toFixed(3);
  return text.startsWith('-0.000') ? '0' : text;
};
