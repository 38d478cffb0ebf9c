import { describe, expect, it } from 'vitest';
import { mm } from '../periodicals.fixture.js';
import { toPlain } from './plain.js';
import { count, length, type Table, text } from './table.js';

const trial: Table = {
  name: 'trial',
  title: ['Trial'],
  columns: [
    { heading: 'Part', kind: 'text' },
    { heading: 'Pieces', kind: 'count' },
    { heading: 'Width', kind: 'length' },
  ],
  rows: [
    [text('lh'), count(2), length(mm('583.803125'))],
    [text('shelf \u001b[31m'), count(10), length(mm(18))],
  ],
  notes: [],
  cautions: ['Clamp the work.'],
};

describe('a table as text', () => {
  it('is aligned, with units in the headings', () => {
    expect(toPlain(trial, { units: 'mm', decimals: 6 })).toBe(`Trial

Part         Pieces  Width (mm)
-----------  ------  ----------
lh                2  583.803125
shelf ␛[31m      10          18

Before you start: Clamp the work.
`);
  });

  it('shows what rounding to inches lost, and nothing where nothing was', () => {
    const exact: Table = { ...trial, rows: [[text('lh'), count(1), length(mm('19.05'))]] };
    const rounded: Table = { ...trial, rows: [[text('lh'), count(1), length(mm(18))]] };
    expect(toPlain(exact, { units: 'in' })).not.toContain('mm)');
    expect(toPlain(rounded, { units: 'in', denominator: 32 })).toContain('23/32 (-0.26 mm)');
  });

  it('says a warning in words', () => {
    expect(toPlain({ ...trial, warning: 'Do not cut.' }, { units: 'mm' })).toContain('WARNING: Do not cut.');
  });
});
