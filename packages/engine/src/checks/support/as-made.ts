import { say, type Text } from '../../fit/text.js';
import type { Bounded } from '../../number/bounded.js';
import { Rational } from '../../number/rational.js';
import { AsMade } from '../../tolerance/as-made.js';
import type { Contributor, Origin } from '../../tolerance/contributor.js';
import { type Reckoning, USUAL_RECKONING } from '../../tolerance/judge.js';
import { shiftIn, type Tried } from '../../tolerance/tried.js';
import { perContext } from './remember.js';

/** The cabinet with its errors, once for all checks that ask. */
export const asMade = perContext((context) => new AsMade(context.spec, context.solved, context.fit));
export const reckoningOf = perContext(({ spec }): Reckoning => spec.shop.tolerances?.reckon ?? USUAL_RECKONING);

/** A length of a message, to the nearest hundredth upwards, so that it never reads as the limit it is beyond. */
export const upwards = ({ value, error }: Bounded): Rational =>
  Rational.of(Math.ceil((value - error) * 100 - 1e-6), 100);

export const reckonedBy = (reckoning: Reckoning): string =>
  reckoning === 'worst case' ? 'everything off at once' : 'by root sum square';

/** The largest of what adds up, and what share it has. */
export function mostly(ranked: readonly { readonly of: Contributor; readonly share: number }[]): Text {
  const [first, second] = ranked;
  if (!first) return [];
  const share = (of: number) => `${Math.round(of * 100)} %`;
  if (!second || first.share > 0.6) return say`; most of it (${share(first.share)}) is: ${first.of.words}`;
  return say`; most of it comes from: ${first.of.words} (${share(first.share)}) and ${second.of.words} (${share(second.share)})`;
}

/** What is off for certain, before anything strays: a stack of spacers, the step of a stop. */
export function surely(adds: Tried): Text {
  const shift = shiftIn(adds);
  return shift.isZero() ? [] : say` (${shift.abs()} of it by the steps of the stop or the spacers in stock)`;
}

/** What makes the largest part smaller. */
const CURES: Readonly<Record<Origin, string>> = {
  thickness: 'Take sheets of a closer tolerance, or measure each piece',
  band: 'Take a band of a closer tolerance, or trim it by the part',
  written: 'Write a closer tolerance, and keep it',
  saw: 'Cut the parts to one stop of the saw, so that they come out alike',
  square: 'Set the saw square by a test cut',
  mitre: 'Set the bevel by a test corner',
  cuts: 'Cut to a stop after a test cut in scrap',
  machine: 'Mill both halves at one setting of the base',
  fence: 'Mill both halves at the same fence, or set the fences by one piece',
  spacer: 'Take one block made to measure',
  stop: 'Set the stop by a block of the length, not by a scale',
  line: 'Set the machine against a stop, not to a line read by eye',
  cup: 'Hold the panel flat while it is milled: hold clamps',
  dirt: 'Brush bed, fences and stops off before each piece',
};

export const cureFor = (origin: Origin): string => CURES[origin];
