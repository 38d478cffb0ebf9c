import { Rational } from '../number/rational.js';
import type { Contributor } from './contributor.js';
import { type Curve, straightened } from './curve.js';
import { contributorsOf } from './reader.js';
import { type Contribution, contributions, type Stack } from './stack.js';

/** How a result comes of its contributors: as a sum of them, or as what is no sum. */
export type Tried = { readonly stack: Stack } | { readonly curve: Curve };

export const contributorsIn = (adds: Tried): readonly Contributor[] =>
  'stack' in adds ? contributorsOf(adds.stack) : adds.curve.of;

/** What is off for certain, before anything strays. */
export const shiftIn = (adds: Tried): Rational => ('stack' in adds ? adds.stack.shift : Rational.ZERO);

/** What it is made up of, the largest first. */
export const rankedIn = (adds: Tried): readonly Contribution[] =>
  'stack' in adds ? contributions(adds.stack) : straightened(adds.curve).contributions;

/** What some of its contributors bring to it, everything else as planned. */
export function broughtBy(adds: Tried, some: (of: Contributor) => boolean): Tried {
  if ('stack' in adds) return { stack: { shift: Rational.ZERO, terms: adds.stack.terms.filter(({ of }) => some(of)) } };
  const { of, at } = adds.curve;
  const kept = of.filter(some);
  const places = kept.map((one) => of.indexOf(one));
  return {
    curve: {
      of: kept,
      at: (off) => {
        const all = of.map(() => 0);
        places.forEach((place, i) => {
          all[place] = off[i] ?? 0;
        });
        return at(all);
      },
    },
  };
}

/** Whether nothing at all can put the result off. */
export const isNothing = (adds: Tried): boolean => contributorsIn(adds).length === 0 && shiftIn(adds).isZero();
