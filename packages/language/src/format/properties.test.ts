import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
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

const scraps = fc.string({ unit: fc.constantFrom(...'{}.,:"/*-+ \n\r\tab1 in') });

/** Formatting settles at once, keeps tokens, comments and errors, and keeps the line ends there are. */
function expectLaws(source: string): string {
  const once = format(source);
  expect(format(once)).toBe(once);
  expect(meaning(once)).toBe(meaning(source));
  expect(comments(once)).toEqual(comments(source));
  const unix = source.replace(/\r\n?/g, '\n');
  if (unix.includes('\n')) expect(format(unix.replaceAll('\n', '\r\n'))).toBe(format(unix).replaceAll('\n', '\r\n'));
  return once;
}

describe('formatting', () => {
  it('of any white space and comments keeps its laws, and leaves no stray blanks', () => {
    fc.assert(
      fc.property(mangled, (source) => {
        const once = expectLaws(source);
        const { parserErrors, lexerErrors } = reader.parse(source);
        if (parserErrors.length + lexerErrors.length > 0) return;
        expect(once.replace(/\/\*[\s\S]*?\*\//g, '/**/')).not.toMatch(/[ \t]\n|\n\n\n|\t/);
        expect(once).toMatch(/[^\n]\n$/);
      }),
      { numRuns: 30 },
    );
  });

  it('of a broken text keeps its laws', () => {
    fc.assert(
      fc.property(broken, (source) => void expectLaws(source)),
      { numRuns: 40 },
    );
  });

  it('of scraps keeps its laws', () => {
    fc.assert(
      fc.property(scraps, (source) => void expectLaws(source)),
      { numRuns: 200 },
    );
  });
});
