import { describe, expect, it } from 'vitest';
import { Lines } from './lines.js';

const source = (start: number, end: number) => ({ uri: 'file:///a.joinery', start, end });

describe('lines of a text', () => {
  const lines = new Lines('units mm\r\nimport "shop"\n\nlast');

  it('tells line and column from 1, and quotes whole lines without their ends', () => {
    expect(lines.quote(source(6, 8), 'a')).toEqual({
      file: 'a',
      line: 1,
      column: 7,
      endLine: 1,
      endColumn: 9,
      lines: ['units mm'],
    });
    expect(lines.quote(source(10, 10), 'a')).toMatchObject({ line: 2, column: 1, lines: ['import "shop"'] });
  });

  it('quotes several lines, an empty one included', () => {
    expect(lines.quote(source(17, 29), 'a')).toMatchObject({
      line: 2,
      column: 8,
      endLine: 4,
      endColumn: 5,
      lines: ['import "shop"', '', 'last'],
    });
  });

  it('takes a source beyond the text to its end', () => {
    expect(lines.quote(source(500, 600), 'a')).toMatchObject({ line: 4, column: 5, endLine: 4, endColumn: 5 });
    expect(new Lines('').quote(source(3, 1), 'a')).toMatchObject({ line: 1, column: 1, lines: [''] });
  });
});
