import fc from 'fast-check';
import { Rational } from '../number/rational.js';
import type { Contributor } from './contributor.js';
import { type Stack, single, stacked } from './stack.js';
import type { Tried } from './tried.js';

/** Hundredths of a millimetre. */
const hundredths = (most: number) => fc.integer({ min: 0, max: most }).map((n) => Rational.of(n, 100));

export const contributor = (id: string): fc.Arbitrary<Contributor> =>
  fc
    .record({ plus: hundredths(90), minus: hundredths(90) })
    .map((range) => ({ id, origin: 'saw' as const, words: [id], ...range }));

/** Contributors, and a stack that takes each of them by some factor. */
export const randomStack = (
  most: number,
): fc.Arbitrary<{ readonly of: readonly Contributor[]; readonly stack: Stack }> =>
  fc.integer({ min: 1, max: most }).chain((count) =>
    fc
      .tuple(
        fc.tuple(...Array.from({ length: count }, (_, i) => contributor(`c${i}`))),
        fc.array(fc.integer({ min: -8, max: 8 }), { minLength: count, maxLength: count }),
        fc.integer({ min: -50, max: 50 }),
      )
      .map(([of, factors, shift]) => ({
        of,
        stack: {
          ...stacked(...of.map((one, i) => single(one, Rational.of(factors[i] ?? 0, 4)))),
          shift: Rational.of(shift, 100),
        },
      })),
  );

/** A result that is a sum; nothing else is expected where it is asked for. */
export function stackIn(adds: Tried): Stack {
  if (!('stack' in adds)) throw new Error('no sum');
  return adds.stack;
}

/** What a stack comes to when each contributor is off by so much. */
export const amountOf = ({ shift, terms }: Stack, off: ReadonlyMap<string, Rational>): Rational =>
  terms.reduce((sum, { of, coefficient }) => sum.add(coefficient.mul(off.get(of.id) ?? Rational.ZERO)), shift);
