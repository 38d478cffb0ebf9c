import {
  contributorsIn,
  type FitResult,
  type FittedJoint,
  figuresOf,
  isNothing,
  type JointError,
  type Rational,
  toldOff,
  USUAL_RECKONING,
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
  const { adds } = error;
  const what = whatIs(joint, error);
  if (isNothing(adds)) {
    // Nothing to tell of, but that the sheet is of no account at a face both halves are measured from.
    return error.kind === 'step' ? [`- ${what}: none; the thickness of the sheet drops out there`] : [];
  }
  const told = (length: Parameters<typeof toldOff>[0]) => toldOff(length, lengths.units);
  const { contributions, rootSumSquare, worst: range } = figuresOf(adds);
  const [least, most, middle] = [told(range.least), told(range.most), told(rootSumSquare.middle)];
  const around = middle === told(NONE) ? '' : `${middle} `;
  const even = least === `−${most}` || (least === most && most === told(NONE));
  const worst = even ? `± ${most}` : `${least} to ${most}`;
  const reckoning = result.spec.shop.tolerances?.reckon ?? USUAL_RECKONING;
  const figures =
    reckoning === 'worst case'
      ? `${worst}, everything off at once`
      : `${around}± ${told(rootSumSquare.half)}, at the worst ${worst}`;
  const limit = limitOf(result, error);
  const [largest] = contributions;
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

const NONE = { value: 0, error: 0 };

const sheetWords = ({ kind, adds }: JointError): string =>
  kind !== 'step' || contributorsIn(adds).some(({ origin }) => origin === 'thickness')
    ? ''
    : '; the thickness of the sheet drops out';
