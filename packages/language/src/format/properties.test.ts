import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineEnd } from './pieces.js';
import { comments, examples, format, meaning, reader } from './texts.fixture.js';

const text = fc.constantFrom(...examples.values());
/** White space that keeps two tokens apart, seldom a line end. */
const space = fc.constantFrom(' ', ' ', ' ', '  ', '   ', '\t', '\n', '\n\n\n', ' \n\t');
const comment = fc.constantFrom(
  '',
  '',
  '',
  '',
  '',
  '/* why */',
  '/* one\n   two */',
  '// aside\n',
  '\n// alone\n',
  '/**/',
);

/** An example with the white space between its tokens changed, and comments put between them. */
const mangled = fc
  .tuple(text, fc.array(fc.tuple(space, comment, space), { minLength: 1, maxLength: 40 }))
  .map(([source, fills]) => {
    const out: string[] = [];
    let at = 0;
    reader.tokens(source).tokens.forEach(({ startOffset, image }, index) => {
      const [before, aside, after] = fills[index % fills.length] ?? [' ', '', ' '];
      const gap = source.slice(at, startOffset);
      // A comment of the source stays, with its line end.
      if (index > 0) out.push(/\S/.test(gap) ? `${gap}\n` : aside === '' ? before : `${before}${aside}${after}`);
      out.push(image);
      at = startOffset + image.length;
    });
    return out.join('');
  });

/** An example with one token taken out, doubled or put in the place of another. */
const broken = fc
  .tuple(text, fc.nat(), fc.nat(), fc.constantFrom('delete', 'double', 'replace', 'junk'))
  .map(([source, a, b, how]) => {
    const { tokens } = reader.tokens(source);
    const [one, other] = [tokens[a % tokens.length], tokens[b % tokens.length]];
    if (one === undefined || other === undefined) return source;
    const instead = { delete: '', double: `${one.image} ${one.image}`, replace: other.image, junk: `${one.image} ?#` }[
      how
    ];
    return source.slice(0, one.startOffset) + instead + source.slice(one.startOffset + one.image.length);
  });

const anything = fc.oneof(mangled, broken, fc.string({ unit: fc.constantFrom(...'{}.,:"/*-+ \n\r\tab1 in') }));

const RUNS = { numRuns: 100 };

describe('formatting', { timeout: 120_000 }, () => {
  it('twice is formatting once', () => {
    fc.assert(
      fc.property(anything, (source) => {
        const once = format(source);
        expect(format(once)).toBe(once);
      }),
      RUNS,
    );
  });

  it('keeps the meaning and the errors', () => {
    fc.assert(
      fc.property(anything, (source) => {
        expect(meaning(format(source))).toBe(meaning(source));
      }),
      RUNS,
    );
  });

  it('keeps every comment, in order', () => {
    fc.assert(
      fc.property(anything, (source) => {
        expect(comments(format(source))).toEqual(comments(source));
      }),
      RUNS,
    );
  });

  it('keeps the line ends a text has', () => {
    fc.assert(
      fc.property(anything, (source) => {
        const unix = source.replace(/\r\n?/g, '\n');
        const formatted = format(unix);
        fc.pre(unix.includes('\n') && formatted !== unix);
        expect(format(unix.replaceAll('\n', '\r\n'))).toBe(formatted.replaceAll('\n', '\r\n'));
        expect(lineEnd(formatted)).toBe('\n');
      }),
      RUNS,
    );
  });

  it('gets through whatever has no errors: no line but those of a comment keeps blanks at its end', () => {
    fc.assert(
      fc.property(mangled, (source) => {
        const { parserErrors, lexerErrors } = reader.parse(source);
        fc.pre(parserErrors.length + lexerErrors.length === 0);
        const formatted = format(source);
        expect(formatted.replace(/\/\*[\s\S]*?\*\//g, '/**/')).not.toMatch(/[ \t]\n|\n\n\n|\t/);
        expect(formatted).toMatch(/[^\n]\n$/);
      }),
      RUNS,
    );
  });
});
