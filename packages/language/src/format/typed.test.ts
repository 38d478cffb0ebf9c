import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applied } from '../rename/reads-back.js';
import type { Edit } from './edits.js';
import { editsInRange } from './range.js';
import { toEnd } from './steps.js';
import { comments, examples, format, meaning, reader } from './texts.fixture.js';
import { editsAfterTyping } from './typed.js';

/** A text after the character before its cursor `|` was typed, the cursor still in it. */
function typed(withCursor: string): string {
  const offset = withCursor.indexOf('|');
  const text = withCursor.replace('|', '');
  const edits = toEnd(editsAfterTyping(text, offset, text[offset - 1] ?? '', reader));
  const moved = edits
    .filter(({ end }) => end <= offset)
    .reduce((sum, { start, end, text: now }) => sum + now.length - (end - start), 0);
  const after = applied(text, edits);
  return `${after.slice(0, offset + moved)}|${after.slice(offset + moved)}`;
}

const linesOf = (text: string): string[] => text.split(/\r\n|\r|\n/);
const lineAt = (text: string, offset: number): number => linesOf(text.slice(0, offset)).length - 1;

describe('formatting while typing', () => {
  it('lays out the line that was ended, and leaves the one the cursor is on', () => {
    expect(typed('cabinet A {\n    part   a:level of b\n      |\n}\n')).toBe(
      'cabinet A {\n    part   a:level of b\n      |\n}\n',
    );
    expect(typed('cabinet A {\n    part   a:level of b\n|\n}\n')).toBe('cabinet A {\n  part a : level of b\n|\n}\n');
  });

  it('lays out the line of a brace that is closed, in front of it', () => {
    expect(typed('cabinet A {\n  butt a to b.top {\n     flush   top\n      }|\n}\n')).toBe(
      'cabinet A {\n  butt a to b.top {\n     flush   top\n  }|\n}\n',
    );
    expect(typed('cabinet A {\n  butt a to b.top {flush   top}|   \n}\n')).toBe(
      'cabinet A {\n  butt a to b.top { flush top }|   \n}\n',
    );
  });

  it('keeps the line ends there are', () => {
    expect(typed('cabinet A {\r\n   part   a:level of b\r\n|\r\n}\r\n')).toBe(
      'cabinet A {\r\n  part a : level of b\r\n|\r\n}\r\n',
    );
  });
});

describe('formatting some lines', () => {
  it('takes a line wholly if any of it is meant, its indent as well', () => {
    const text = 'cabinet A {\n    part   a:level of b\n    part   c:level of b\n}\n';
    const at = text.indexOf('a:');
    expect(applied(text, toEnd(editsInRange(text, at, at, reader)))).toBe(
      'cabinet A {\n  part a : level of b\n    part   c:level of b\n}\n',
    );
  });
});

/** An example whose blanks are stretched, its lines moved in and out, with line ends of one kind. */
const untidy = fc
  .tuple(
    fc.constantFrom(...examples.values()),
    fc.array(fc.constantFrom('', ' ', '  ', '     '), { minLength: 3, maxLength: 9 }),
    fc.constantFrom('\n', '\r\n'),
  )
  .map(([text, blanks, end]) =>
    linesOf(text)
      .map(
        (line, index) =>
          (blanks[index % blanks.length] ?? '') + line.replace(/ /g, () => ` ${blanks[(index * 7) % blanks.length]}`),
      )
      .join(end),
  );

/** What edits must keep: other lines, meaning, comments, the number of lines. */
function expectOnly(text: string, edits: readonly Edit[], first: number, last: number): string {
  const after = applied(text, edits);
  expect(meaning(after)).toBe(meaning(text));
  expect(comments(after)).toEqual(comments(text));
  const [old, now] = [linesOf(text), linesOf(after)];
  expect(now.slice(0, first)).toEqual(old.slice(0, first));
  expect(now.slice(now.length - (old.length - 1 - last))).toEqual(old.slice(last + 1));
  return after;
}

describe('complaint 8: the formatter eats comments or never settles', () => {
  it('a range keeps comments, meaning and all other lines, and settles', () => {
    fc.assert(
      fc.property(untidy, fc.nat(), fc.nat({ max: 400 }), (text, at, length) => {
        const start = at % text.length;
        const end = Math.min(text.length, start + length);
        const [first, last] = [lineAt(text, start), lineAt(text, end)];
        const after = expectOnly(text, toEnd(editsInRange(text, start, end, reader)), first, last);
        expect(text.includes('\r\n')).toBe(after.includes('\r\n'));
      }),
      { numRuns: 60 },
    );
  });

  it('the range of the whole text is the whole format', () => {
    fc.assert(
      fc.property(untidy, (text) => {
        expect(applied(text, toEnd(editsInRange(text, 0, text.length, reader)))).toBe(format(text));
      }),
      { numRuns: 20 },
    );
  });

  it('typing changes one line, never behind the cursor, and settles', () => {
    fc.assert(
      fc.property(untidy, fc.nat(), (text, pick) => {
        const places = [...text.matchAll(/\n|\}/g)];
        const { index = 0, 0: character } = places[pick % places.length] ?? { 0: '\n' };
        const offset = index + 1;
        const line = lineAt(text, offset) - (character === '\n' ? 1 : 0);
        const edits = toEnd(editsAfterTyping(text, offset, character, reader));
        for (const { end } of edits) expect(end).toBeLessThan(offset);
        const after = expectOnly(text, edits, line, line);
        const moved = offset + after.length - text.length;
        expect(toEnd(editsAfterTyping(after, moved, character, reader))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
