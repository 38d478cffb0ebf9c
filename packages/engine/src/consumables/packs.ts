import { Rational } from '../number/rational.js';
import type { Pack } from '../spec/stock.js';

/** What is bought to cover a need. */
export interface Purchase {
  /** The largest first; each count above 0. */
  readonly packs: readonly { readonly pack: Pack; readonly count: number }[];
  /** What they hold together, in the unit of the need. */
  readonly holds: Rational;
  /** How much of that is over. */
  readonly over: Rational;
  /** No other choice leaves less over, and none that leaves as little takes fewer packs. False where that is not known. */
  readonly proven: boolean;
}

/** So many sums of small packs are looked at; beyond it the choice is not proven. */
const MOST_SUMS = 200_000;

/**
 * The packs that cover a need with the least left over, and among these the fewest.
 *
 * With M the largest size, fewer than M packs of the others are ever worth taking: among M of them some have a sum that M
 * divides (pigeonhole on the remainders of their running sums), and as many of the largest hold the same in fewer packs.
 * What lies beyond that is covered by the largest; the rest is searched through by its sums (an unbounded knapsack).
 * @param need ≥ 0
 * @param packs sizes above 0, each another; undefined without any
 */
export function packsFor(need: Rational, packs: readonly Pack[]): Purchase | undefined {
  const sorted = [...packs].sort((a, b) => b.size.compare(a.size));
  const [largest, second] = sorted;
  if (!largest) return undefined;
  if (need.sign() <= 0) return bought(sorted, [], need, true);
  const unit = commonUnit(sorted.map(({ size }) => size));
  const sizes = sorted.map(({ size }) => size.div(unit).numerator);
  const units = need.div(unit).ceil().numerator;
  const [M = 1n, next = 0n] = sizes;
  if (!second) return bought(sorted, [Number(ceilDiv(units, M))], need, true);
  const beyond = units - (M - 1n) * next;
  const sure = beyond > 0n ? beyond / M : 0n;
  const rest = units - sure * M;
  const found = rest + M <= BigInt(Number.MAX_SAFE_INTEGER) ? leastOver(Number(rest), sizes.map(Number)) : undefined;
  const counts = found ?? roughly(rest, sizes);
  return bought(
    sorted,
    counts.map((count, i) => (i === 0 ? count + Number(sure) : count)),
    need,
    found !== undefined,
  );
}

function bought(sorted: readonly Pack[], counts: readonly number[], need: Rational, proven: boolean): Purchase {
  const packs = sorted.flatMap((pack, i) => (counts[i] ? [{ pack, count: counts[i] }] : []));
  const holds = Rational.sum(packs.map(({ pack, count }) => pack.size.mul(Rational.of(count))));
  return { packs, holds, over: holds.sub(need), proven };
}

/** A sum of packs: how many they are, and the last of them. */
interface Sum {
  readonly sum: number;
  readonly packs: number;
  readonly last: number;
  readonly before: Sum | undefined;
}

/** How many of each size cover `need` with least over, then fewest; undefined where there are too many sums to look at. */
function leastOver(need: number, sizes: readonly number[]): number[] | undefined {
  const below = new Map<number, Sum | undefined>([[0, undefined]]);
  let best: Sum | undefined;
  for (const [last, size] of sizes.entries()) {
    for (const [start, first] of [...below]) {
      let before = first;
      for (let sum = start + size; ; sum += size) {
        const now: Sum = { sum, packs: (before?.packs ?? 0) + 1, last, before };
        if (sum >= need) {
          if (!best || sum < best.sum || (sum === best.sum && now.packs < best.packs)) best = now;
          break;
        }
        const other = below.get(sum);
        // What goes on from there goes on from the better one.
        if (other && other.packs <= now.packs) break;
        below.set(sum, now);
        if (below.size > MOST_SUMS) return undefined;
        before = now;
      }
    }
  }
  const counts = sizes.map(() => 0);
  for (let one = best; one; one = one.before) counts[one.last] = (counts[one.last] ?? 0) + 1;
  return counts;
}

/** The largest as often as it goes in, and one more pack, the smallest that holds what is left. */
function roughly(need: bigint, sizes: readonly bigint[]): number[] {
  const [M = 1n] = sizes;
  const left = need % M;
  const counts = sizes.map((_, i) => (i === 0 ? Number(need / M) : 0));
  const last = sizes.findLastIndex((size) => size >= left);
  if (left > 0n) counts[last] = (counts[last] ?? 0) + 1;
  return counts;
}

/** The largest length, mass or number that divides all of them. */
function commonUnit(sizes: readonly Rational[]): Rational {
  return sizes.reduce((a, b) => {
    const denominator = a.denominator * b.denominator;
    return Rational.of(gcd(a.numerator * b.denominator, b.numerator * a.denominator), denominator);
  });
}

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b));
const ceilDiv = (a: bigint, b: bigint): bigint => (a + b - 1n) / b;
