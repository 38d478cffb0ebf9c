import type { Rational } from '../number/rational.js';
import type { Reckoned } from './reckon.js';
import { type Trials, type Tried, tryOut } from './trials.js';

/** One thing tried, by the joint or distance it belongs to and what it is. */
export interface Wanted {
  readonly key: string;
  readonly tried: Tried;
  readonly limit?: Rational | undefined;
}

/** Every result of a cabinet that trials can be made of, in the order of a report. */
export function wantedOf(reckoned: Reckoned): readonly Wanted[] {
  const { step, gap } = reckoned.spec.shop.limits;
  const joints = reckoned.joints.flatMap(({ joint, errors, mitre }) => [
    ...errors.map(({ kind, side, off }) => ({
      key: `${joint.id} ${kind} ${side}`,
      tried: { stack: off },
      limit: kind === 'place' ? undefined : kind === 'gap' ? gap : step,
    })),
    ...(mitre
      ? [
          { key: `${joint.id} opening`, tried: { curve: mitre.opening }, limit: gap },
          { key: `${joint.id} toes`, tried: { curve: mitre.toes }, limit: step },
          { key: `${joint.id} heels`, tried: { curve: mitre.heels } },
        ]
      : []),
  ]);
  const distances = [...reckoned.outside, ...reckoned.openings].map(({ from, to, off }) => ({
    key: `${from.part}.${from.side} to ${to.part}.${to.side}`,
    tried: { stack: off },
  }));
  const { squareness } = reckoned;
  return [
    ...joints,
    ...distances,
    ...(squareness ? [{ key: 'diagonals', tried: { curve: squareness.difference } }] : []),
  ];
}

/** Seeded trials of a whole cabinet: the same contributors, drawn once a trial, for all its results. */
export function tryReckoned(reckoned: Reckoned, samples: number, seed: number): ReadonlyMap<string, Trials> {
  const wanted = wantedOf(reckoned);
  const results = tryOut(
    wanted.map(({ tried, limit }) => ({ tried, limit: limit?.toNumber() })),
    samples,
    seed,
  );
  return new Map(wanted.map(({ key }, i) => [key, results[i] as Trials]));
}
