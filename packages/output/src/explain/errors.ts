import { type FittedJoint, figuresOf, type JointError, type LengthFormat } from '@dryfit/engine';
import { printText } from '../print/length.js';
import { visible } from '../print/visible.js';
import { figuresWords, resultWords } from '../tolerance/words.js';

/** What may be off at a joint, a line each, with the largest part of it. */
export function errorLines(joint: FittedJoint, errors: readonly JointError[], format: LengthFormat): readonly string[] {
  return errors.flatMap(({ kind, side, adds }) => {
    const figures = figuresOf(adds);
    const [largest] = figures.contributions;
    const words = figuresWords(figures, format);
    if (words === 'nothing' && kind !== 'step') return [];
    const mostly = largest ? `; mostly ${printText(largest.of.words, format)}` : '';
    return [`  ${visible(`${resultWords({ kind, joint, side }, format)}: ${words}${mostly}`)}`];
  });
}
