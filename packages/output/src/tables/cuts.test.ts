import type { Cut } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { boxOf, part, result, source } from '../periodicals.fixture.js';
import { printed } from '../table/printed.fixture.js';
import { table } from './cuts.js';

const batch = (more: Parameters<typeof result>[0] = {}) => ({
  title: ['Periodicals'],
  items: [{ result: result(more), count: 1 }],
  errors: 0,
});
const side = (cuts: readonly Cut[]) => batch({ parts: [part('lh', 'upright', [0, 18, 0, 500, 0, 700], { cuts })] });

describe('the table of grooves and other cuts', () => {
  it('measures a groove from the nearer edge, and says whether it runs through', () => {
    expect(printed(table.make(batch())).map((row) => Object.values(row).join(' | '))).toEqual([
      'base | 1 | groove | top face | rear edge | 16 | 6 | 8 | right through',
      'lh | 1 | groove | right face | rear edge | 16 | 6 | 8 | from bottom end | 9.7 | 710.3',
      'rh | 1 | groove | left face | rear edge | 16 | 6 | 8 | from bottom end | 9.7 | 710.3',
      'top | 1 | groove | bottom face | rear edge | 16 | 6 | 8 | right through',
    ]);
  });

  it('measures from the end it lies nearer to', () => {
    const high: Cut = {
      kind: 'housing',
      box: boxOf([12, 18, 0, 500, 600, 618]),
      surface: 'right',
      run: 'y',
      source: source(),
    };
    expect(printed(table.make(side([high])))[0]).toMatchObject({
      'Near wall from': 'top end',
      'Near wall at (mm)': '82',
      'Width (mm)': '18',
      'Depth (mm)': '6',
    });
  });

  it('describes a notch by what it takes off each side of its corner', () => {
    const notch: Cut = {
      kind: 'notch',
      box: boxOf([0, 18, 0, 76, 0, 102]),
      surface: 'front',
      run: 'x',
      source: source(),
    };
    expect(printed(table.make(side([notch])))[0]).toMatchObject({
      Cut: 'notch',
      Into: 'front edge',
      'Near wall from': 'bottom end',
      'Near wall at (mm)': '0',
      'Width (mm)': '102',
      'Depth (mm)': '76',
      Along: 'right through',
    });
  });

  it('says on which face the toe of a bevel lies', () => {
    const bevel: Cut = { kind: 'bevel', side: 'top', outer: 'left', angle: 45, joint: 'top / lh', source: source() };
    expect(printed(table.make(side([bevel])))).toEqual([
      { Part: 'lh', Pieces: '1', Cut: '45° bevel', Into: 'top end', 'Near wall from': 'toe on left face' },
    ]);
  });

  it('is silent about a part whose place is not fixed', () => {
    const cut: Cut = {
      kind: 'groove',
      box: boxOf([0, 8, 10, 16, 0, 700]),
      surface: 'left',
      run: 'z',
      source: source(),
    };
    expect(table.make(batch({ parts: [part('lh', 'upright', undefined, { cuts: [cut] })] })).rows).toEqual([]);
  });
});
