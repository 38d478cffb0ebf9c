import { describe, expect, it } from 'vitest';
import { half, JOINTS, joint, mm, part, result, spacer } from '../periodicals.fixture.js';
import { noted, printed } from '../table/printed.fixture.js';
import { table } from './slots.js';

const batch = (more: Parameters<typeof result>[0] = {}, count = 1) => ({
  title: ['Periodicals'],
  items: [{ result: result(more), count }],
  errors: 0,
});

describe('the table of slots', () => {
  it('gives both halves of a joint, each from its own datum edge and reference', () => {
    const rows = printed(table.make(batch())).filter((row) => row.Part === 'shelf' || row.Meets === 'shelf');
    expect(rows.map((row) => Object.values(row).join(' | '))).toEqual([
      'lh | 1 | right face | shelf | rear edge | left | 70, 180, 270, 420, 500 | bottom end | 359.5 | 12.3 | biscuit20',
      'rh | 1 | left face | shelf | rear edge | right | 70, 180, 270, 420, 500 | bottom end | 359.5 | 12.3 | biscuit20',
      'shelf | 1 | left end | lh | rear edge | left | 48, 158, 248, 398, 478 | bottom face | 9.5 | 12.3 | biscuit20',
      'shelf | 1 | right end | rh | rear edge | right | 48, 158, 248, 398, 478 | bottom face | 9.5 | 12.3 | biscuit20',
    ]);
  });

  it('keeps top and base apart although they are one piece, because their reference faces have other names', () => {
    const rows = printed(table.make(batch()));
    expect(rows.filter((row) => row.Reference === 'top face').map((row) => row.Part)).toEqual(['top', 'top']);
    expect(rows.filter((row) => row.Part === 'base').every((row) => row.Reference === 'bottom face')).toBe(true);
  });

  it('folds like parts that are milled alike, and multiplies by the count of cabinets', () => {
    const shelves = [1, 2, 3].map((n) => part(`shelf ${n}`, 'level', [0, 500, 0, 300, 300 * n, 300 * n + 18]));
    const joints = shelves.map((shelf) => {
      const id = `${shelf.id} / lh`;
      const figures = {
        joint: id,
        part: shelf.id,
        surface: 'left',
        hand: 'left',
        from: { kind: 'face', side: 'bottom' },
        across: '9.5',
      } as const;
      // The third stands further in, so it is not milled alike.
      const setback = shelf.index === 3 ? spacer(6, [6]) : spacer(0);
      return joint(shelf.id, 'lh', [half({ ...figures, marks: [80, 160], spacer: setback })]);
    });
    const rows = printed(
      table.make(
        batch({ parts: [...shelves, part('lh', 'upright', [0, 18, 0, 300, 0, 1200], { same: 9 })], joints }, 2),
      ),
    );
    expect(rows.map((row) => `${row.Pieces} ${row.Part}: ${row['From datum (mm)']}`)).toEqual([
      '4 shelf 1, shelf 2: 80, 160',
      '2 shelf 3: 74, 154',
    ]);
  });

  it('measures a mitre from its toe', () => {
    const parts = [
      part('top', 'level', [0, 600, 0, 400, 700, 718]),
      part('lh', 'upright', [0, 18, 0, 400, 0, 718], { same: 1 }),
    ];
    const mitred = joint('top', 'lh', [
      half({
        part: 'top',
        joint: 'top / lh',
        surface: 'left',
        hand: 'left',
        marks: [100],
        from: { kind: 'toe', side: 'top' },
        across: '18.7',
        role: 'mitre',
      }),
    ]);
    const [row] = printed(table.make(batch({ parts, joints: [mitred] })));
    expect(row).toMatchObject({
      'Mill into': 'mitre at left end',
      Reference: 'toe (top face)',
      'From reference (mm)': '18.7',
    });
  });

  it('says which lines have no slot, and why a joint has no connectors', () => {
    const lines = [
      { fromZero: mm(80), use: 'used' },
      { fromZero: mm(240), use: 'skipped' },
      { fromZero: mm(260), use: 'left out' },
      { fromZero: mm(900), use: 'outside contact' },
    ] as const;
    const joints = [
      { ...JOINTS[0], id: 'top / lh', lines } as (typeof JOINTS)[number],
      joint('back', 'lh', [], { without: 'pinned', connector: undefined }),
      joint('back', 'rh', [], { without: 'pinned', connector: undefined }),
    ];
    expect(noted(table.make(batch({ joints })))).toEqual([
      'All distances are to the middle of the slot or hole.',
      'top / lh: no slot at 240 from zero (too near an end of the contact, skipped as its pattern says).',
      'top / lh: no slot at 260 from zero (left out as written).',
      'no connectors ("pinned"): back / lh, back / rh.',
    ]);
  });

  it('carries the cautions, but not over an empty table', () => {
    expect(table.make(batch()).cautions.join(' ')).toMatch(
      /Isolate.*Clamp.*both hands.*guard.*mask.*eye and ear.*manual and local rules/,
    );
    expect(table.make(batch({ joints: [] })).cautions).toEqual([]);
  });
});
