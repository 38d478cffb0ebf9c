import { Rational, type Source } from '@dryfit/engine';
import type { Locate } from './place.js';

/** A text to point into, and exact lengths to write tests with. */

export const mm = (text: string | number): Rational => {
  const value = Rational.parse(String(text).replace(/^-/, ''));
  if (value === undefined) throw new Error(`${text} is no length`);
  return String(text).startsWith('-') ? value.neg() : value;
};

export const TEXT = `units mm
cabinet Periodicals {
  part lh, rh    : upright of birch18
  butt shelf between lh and rh { flush front }
}
`;

/** A source that covers the first place where `words` stand in the text. */
export function source(words = 'cabinet'): Source {
  const start = Math.max(0, TEXT.indexOf(words));
  return { uri: 'file:///bases.joinery', start, end: start + words.length };
}

export const locate: Locate = ({ uri, start, end }) => {
  if (uri !== 'file:///bases.joinery') return undefined;
  const before = TEXT.slice(0, start).split('\n');
  const upTo = TEXT.slice(0, end).split('\n');
  return {
    file: 'bases.joinery',
    line: before.length,
    column: (before.at(-1) as string).length + 1,
    endLine: upTo.length,
    endColumn: (upTo.at(-1) as string).length + 1,
    lines: TEXT.split('\n').slice(before.length - 1, upTo.length),
  };
};
