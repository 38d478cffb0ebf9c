import { describe, expect, it } from 'vitest';
import { half, joint, PARTS, result, shop, spacer } from '../periodicals.fixture.js';
import { noted, printed } from '../table/printed.fixture.js';
import { madeUp, table } from './spacers.js';

const batch = (more: Parameters<typeof result>[0] = {}) => ({
  title: ['Periodicals'],
  items: [{ result: result(more), count: 1 }],
  errors: 0,
});

describe('the table of spacers', () => {
  it('gives width and stack, and draws joints with one setting into one row', () => {
    const rows = printed(table.make(batch()));
    expect(
      rows.filter((row) => row.Part === 'shelf' || row.Part === 'lh').map((row) => Object.values(row).join(' | ')),
    ).toEqual([
      'lh | 1 | right face | base, shelf | rear edge | left | 0 | none | 70, 180, 270, 420, 500',
      'lh | 1 | right face | top | rear edge | right | 0 | none | 70, 180, 270, 420, 500',
      'shelf | 1 | left end | lh | rear edge | left | 22 | 12 + 10 | 70, 180, 270, 420, 500',
      'shelf | 1 | right end | rh | rear edge | right | 22 | 12 + 10 | 70, 180, 270, 420, 500',
    ]);
  });

  it.each([
    [spacer(0), ['none']],
    [spacer(22, [12, 10]), [12, ' + ', 10]],
    [spacer('21.8', [], 'cut'), ['cut a block ', '109/5']],
    [spacer('21.8', [12, 10], 'missing'), ['not in stock; nearest ', 12, ' + ', 10]],
    [spacer('3.1', [], 'missing'), ['not in stock']],
    [spacer(22, [], 'mark out'), ['mark out']],
  ])('says how a spacer comes about', (made, words) => {
    expect(madeUp(made).map(String)).toEqual(words.map(String));
  });

  it('shows how far a stack is off, and only then', () => {
    const off = half({
      part: 'shelf',
      joint: 'shelf / lh',
      surface: 'left',
      hand: 'left',
      marks: [70],
      from: { kind: 'face', side: 'bottom' },
      across: '9.5',
      spacer: spacer('22.1', [12, 10]),
    });
    const made = table.make(batch({ parts: PARTS, joints: [joint('shelf', 'lh', [off])] }));
    expect(printed(made)[0]).toMatchObject({
      'Spacer (mm)': '22.1',
      'Made up of': '12 + 10',
      'Stack off by (mm)': '-0.1',
    });
    expect(noted(made)).toContain('"Stack off by" is the stack less the spacer wanted.');
    expect(printed(table.make(batch())).some((row) => 'Stack off by (mm)' in row)).toBe(false);
  });

  it('sends a shop without a jig to the table of slots', () => {
    const marked = half({
      part: 'shelf',
      joint: 'shelf / lh',
      surface: 'left',
      hand: 'left',
      marks: [70],
      from: { kind: 'face', side: 'bottom' },
      across: '9.5',
      spacer: spacer(22, [], 'mark out'),
    });
    const made = result({ joints: [joint('shelf', 'lh', [marked])] });
    const jigless = { ...made, spec: { ...made.spec, shop: { ...shop, jig: undefined } } };
    const printedNotes = noted(
      table.make({ title: ['Periodicals'], items: [{ result: jigless, count: 1 }], errors: 0 }),
    );
    expect(printedNotes).toEqual(['Without a jig there is nothing to space: mark out from the table of slots.']);
  });
});
