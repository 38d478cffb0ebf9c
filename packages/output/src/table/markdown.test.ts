import { Rational } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { mm } from '../periodicals.fixture.js';
import { escaped, toMarkdown } from './markdown.js';
import { count, EMPTY, length, lengths, type Table, text } from './table.js';

const trial: Table = {
  name: 'trial',
  title: ['Trial: Base'],
  warning: '2 errors were found; do not cut or mill from this table.',
  columns: [
    { heading: 'Part', kind: 'text' },
    { heading: 'Pieces', kind: 'count' },
    { heading: 'Bands', kind: 'text', optional: true },
    { heading: 'At', kind: 'lengths' },
    { heading: 'Depth', kind: 'length' },
  ],
  rows: [
    [text('lh|rh'), count(2), EMPTY, lengths([mm(70), Rational.of(346, 3)]), length(mm('12.3'))],
    [text('a_b_'), count(12), EMPTY, lengths([mm(9)]), length(mm(8))],
  ],
  notes: [['Read twice.']],
  cautions: ['Clamp the work.'],
};

describe('a table as Markdown', () => {
  it('has title, warning, table, notes and cautions, numbers to the right', () => {
    expect(toMarkdown(trial, { units: 'mm' })).toBe(`# Trial: Base

> **WARNING:** 2 errors were found; do not cut or mill from this table.

| Part   | Pieces | At (mm)     | Depth (mm) |
| ------ | -----: | ----------- | ---------: |
| lh\\|rh |      2 | 70, ≈115.33 |       12.3 |
| a\\_b\\_ |     12 | 9           |          8 |

- Read twice.
- ≈ marks a length rounded to 0.01 mm; its exact value is in fit.json.

**Before you start**

- Clamp the work.
`);
  });

  it('leaves out the table when it has no rows', () => {
    expect(toMarkdown({ ...trial, rows: [], warning: undefined, cautions: [] }, { units: 'mm' })).toBe(
      '# Trial: Base\n\n- Read twice.\n',
    );
  });

  it.each([
    ['**bold**', '\\*\\*bold\\*\\*'],
    ['<img src=x>', '\\<img src=x\\>'],
    ['[a](b)', '\\[a\\](b)'],
    ['- item', '\\- item'],
    ['1. item', '1\\. item'],
    ['a\n\nb', 'a b'],
    ['12.3', '12.3'],
  ])('escapes %j', (words, expected) => {
    expect(escaped(words)).toBe(expected);
  });
});
