import type { FittedJoint } from '../fit/fit.js';
import { type Bounded, boundedOf } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import type { Side } from '../spec/sides.js';
import type { Distance } from './cabinet-errors.js';
import { cornersOf, straightened } from './curve.js';
import type { JointError } from './joint-errors.js';
import { CURVE_ERROR } from './judge.js';
import type { Reckoned } from './reckon.js';
import type { Squareness } from './squareness.js';
import { type Contribution, contributions, rootSumSquare, type Stack, worstCase } from './stack.js';
import { type Trials, tryOut } from './trials.js';
import type { Tried } from './tried.js';
import type { Span } from './turned-errors.js';

/** What a result is about. A mitre opens at its heel (or toe), its toes or its heels miss each other. */
export type About =
  | {
      readonly kind: JointError['kind'];
      readonly joint: FittedJoint;
      readonly side: Side;
      readonly otherFace?: Stack | undefined;
    }
  | { readonly kind: 'mitre opening' | 'toes' | 'heels'; readonly joint: FittedJoint }
  | { readonly kind: 'outside' | 'opening'; readonly distance: Distance }
  | { readonly kind: 'span'; readonly span: Span }
  | { readonly kind: 'diagonals'; readonly squareness: Squareness };

/** One thing that may be off in a cabinet, and how it adds up. */
export interface Result {
  /** Unique in its cabinet: "top / lh step top". */
  readonly id: string;
  readonly about: About;
  readonly adds: Tried;
  /** What the shop lets pass, mm. */
  readonly limit?: Rational | undefined;
}

/** Everything that may be off in a cabinet: joint by joint, then the cabinet as a whole. */
export function resultsOf({ joints, outside, openings, spans, spec, squareness }: Reckoned): readonly Result[] {
  const { step, gap } = spec.shop.limits;
  const limitOf = { step, flush: step, place: undefined, gap };
  const found: Result[] = [];
  for (const { joint, errors, mitre } of joints) {
    for (const { kind, side, adds, otherFace } of errors) {
      const id = `${joint.id} ${kind} ${side}`;
      found.push({ id, about: { kind, joint, side, otherFace }, adds, limit: limitOf[kind] });
    }
    if (!mitre) continue;
    const curve = (kind: 'mitre opening' | 'toes' | 'heels', adds: Tried, limit: Rational | undefined) =>
      found.push({ id: `${joint.id} ${kind}`, about: { kind, joint }, adds, limit });
    curve('mitre opening', { curve: mitre.opening }, gap);
    curve('toes', { curve: mitre.toes }, step);
    curve('heels', { curve: mitre.heels }, undefined);
  }
  for (const kind of ['outside', 'opening'] as const)
    for (const distance of kind === 'outside' ? outside : openings) {
      const { from, to, adds } = distance;
      const id = `${kind} ${from.part}.${from.side} to ${to.part}.${to.side}`;
      found.push({ id, about: { kind, distance }, adds });
    }
  for (const span of spans) found.push({ id: `span ${span.part}`, about: { kind: 'span', span }, adds: span.adds });
  if (squareness)
    found.push({ id: 'diagonals', about: { kind: 'diagonals', squareness }, adds: { curve: squareness.difference } });
  return found;
}

/** How far off a result may come, mm, from where it was planned. */
export interface Figures {
  /** Everything off at once: exact for sums; for a curve at its corners. */
  readonly worst: { readonly least: Rational | Bounded; readonly most: Rational | Bounded };
  readonly rootSumSquare: { readonly middle: Rational | Bounded; readonly half: Bounded };
  readonly contributions: readonly Contribution[];
}

export function figuresOf(adds: Tried): Figures {
  if ('stack' in adds) {
    const { middle, half } = rootSumSquare(adds.stack);
    return {
      worst: worstCase(adds.stack),
      rootSumSquare: { middle, half },
      contributions: contributions(adds.stack),
    };
  }
  const bounded = (value: number): Bounded => (value === 0 ? boundedOf(Rational.ZERO) : { value, error: CURVE_ERROR });
  const { least, most } = cornersOf(adds.curve);
  const line = straightened(adds.curve);
  return {
    worst: { least: bounded(least), most: bounded(most) },
    rootSumSquare: { middle: bounded(line.middle), half: bounded(line.half) },
    contributions: line.contributions,
  };
}

/** Seeded trials of a whole cabinet: the same contributors, drawn once a trial, for all its results, by their ids. */
export function tryResults(results: readonly Result[], samples: number, seed: number): ReadonlyMap<string, Trials> {
  const tried = tryOut(
    results.map(({ adds, limit }) => ({ tried: adds, limit: limit?.toNumber() })),
    samples,
    seed,
  );
  return new Map(results.map(({ id }, i) => [id, tried[i] as Trials]));
}
