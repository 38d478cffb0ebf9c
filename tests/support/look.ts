import {
  AXES,
  type Box,
  type Finding,
  type FitResult,
  type FittedJoint,
  type FittedPart,
  type Half,
  Rational,
} from '@dryfit/engine';
import { decimal, fraction, INCH } from './spelling.js';

/** Prints a length exactly: decimals of a millimetre, or whole inches and a fraction. */
export function exactly(length: Rational | undefined, units: 'mm' | 'in' = 'mm'): string {
  if (length === undefined) return 'not known';
  const print = units === 'mm' ? decimal : (l: Rational) => fraction(l.div(INCH));
  return length.sign() < 0 ? `-${print(length.neg())}` : print(length);
}

export function partOf(result: FitResult, id: string): FittedPart {
  const part = result.fit.parts.find((one) => one.id === id);
  if (!part) throw new Error(`no part ${id}`);
  return part;
}

export function boxOf(result: FitResult, id: string): Box {
  const { box } = partOf(result, id);
  if (!box) throw new Error(`the sizes of ${id} are not known`);
  return box;
}

/** A part's finished width, depth and height: "564.6 x 560 x 17.7". */
export const sizeOf = (result: FitResult, id: string, units: 'mm' | 'in' = 'mm'): string =>
  AXES.map((axis) => exactly(partOf(result, id).extent[axis], units)).join(' x ');

export function jointOf(result: FitResult, id: string): FittedJoint {
  const joint = result.fit.joints.find((one) => one.id === id);
  if (!joint) throw new Error(`no joint ${id}; there is ${result.fit.joints.map((one) => one.id).join(', ')}`);
  return joint;
}

/** What is milled into one part of a joint: `halfOf(result, 'shelf / lh', 'lh')`. */
export function halfOf(result: FitResult, joint: string, part: string): Half {
  const half = jointOf(result, joint).halves.find((one) => one.part === part);
  if (!half) throw new Error(`nothing is milled into ${part} at ${joint}`);
  return half;
}

/** Distances of the slots from the part's own datum edge. */
export const marksOf = (half: Half, units: 'mm' | 'in' = 'mm'): string[] =>
  half.slots.map((slot) => exactly(slot.fromDatum, units));

/** Names of the checks that speak, each once. */
export const codesOf = (findings: readonly Finding[]): string[] =>
  [...new Set(findings.map(({ code }) => code))].sort();

/** Exact lengths of a message's figures, and the values of those that are only bounded. */
export const figuresOf = (finding: Finding): (string | number)[] =>
  finding.message.flatMap((piece) =>
    typeof piece === 'string' ? [] : [piece instanceof Rational ? exactly(piece) : piece.value],
  );
