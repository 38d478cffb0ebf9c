import {
  contributions,
  type FitResult,
  type FittedJoint,
  type JointError,
  type Rational,
  rootSumSquare,
  toldOff,
  USUAL_RECKONING,
  worstCase,
} from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { plain } from './markdown.js';

/**
 * What may be off at a joint, a line each: the step between faces meant to be one, how flush its edges come, where a
 * part comes to lie, how far the joint may stand open. Only what the text and the shop say is off is in it.
 */
export function errorLines(result: FitResult, joint: FittedJoint, lengths: Lengths): readonly string[] {
  return result.errors(joint.id).flatMap((error) => line(result, joint, error, lengths));
}

function line(result: FitResult, joint: FittedJoint, error: JointError, lengths: Lengths): readonly string[] {
  const { off } = error;
  const what = whatIs(joint, error);
  if (off.terms.length === 0 && off.shift.isZero()) {
    // Nothing to tell of, but that the sheet is of no account at a face both halves are measured from.
    return error.kind === 'step' ? [`- ${what}: none; the thickness of the sheet drops out there`] : [];
  }
  const told = (length: Parameters<typeof toldOff>[0]) => toldOff(length, lengths.units);
  const { least, most } = worstCase(off);
  const { middle, half } = rootSumSquare(off);
  const around = middle.isZero() ? '' : `${told(middle)} `;
  const worst = least.neg().equals(most) ? `± ${told(most)}` : `${told(least)} to ${told(most)}`;
  const reckoning = result.spec.shop.tolerances?.reckon ?? USUAL_RECKONING;
  const figures =
    reckoning === 'worst case' ? `${worst}, everything off at once` : `${around}± ${told(half)}, at the worst ${worst}`;
  const limit = limitOf(result, error);
  const [largest] = contributions(off);
  const mostly = largest ? `; mostly ${plain(lengths.text(largest.of.words))}` : '';
  const pass = limit ? `, of ${told(limit)} let pass` : '';
  return [`- ${what}: ${figures}${pass}${mostly}${sheetWords(error)}`];
}

function limitOf({ spec }: FitResult, { kind }: JointError): Rational | undefined {
  const { gap, step } = spec.shop.limits;
  return kind === 'gap' ? gap : kind === 'place' ? undefined : step;
}

function whatIs({ entering, host }: FittedJoint, { kind, side }: JointError): string {
  switch (kind) {
    case 'step':
      return `step at the ${side}`;
    case 'flush':
      return `flush at the ${side}`;
    case 'place':
      return `place of the ${side} of ${plain(entering)} on ${plain(host)}`;
    case 'gap':
      return 'opening of the joint';
  }
}

const sheetWords = ({ kind, off }: JointError): string =>
  kind !== 'step' || off.terms.some(({ of }) => of.origin === 'thickness')
    ? ''
    : '; the thickness of the sheet drops out';
