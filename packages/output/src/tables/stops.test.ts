import { describe, expect, it } from 'vitest';
import { JOINTS, mm, result } from '../periodicals.fixture.js';
import { noted, printed } from '../table/printed.fixture.js';
import { table } from './stops.js';

const batch = (more: Parameters<typeof result>[0] = {}) => ({
  title: ['Periodicals'],
  items: [{ result: result(more), count: 1 }],
  errors: 0,
});

describe('the table of stops', () => {
  it('gives each stop with the end it is measured from', () => {
    expect(
      printed(table.make(batch()))
        .filter((row) => row.Part === 'lh')
        .map((row) => Object.values(row).join(' | ')),
    ).toEqual([
      'lh | 1 | right face | base | bottom end | 0',
      'lh | 1 | right face | top | top end | 0',
      'lh | 1 | right face | shelf | bottom end | 350',
    ]);
  });

  it('lists packers where the jig needs them, and then parts without a stop as well', () => {
    const joints = JOINTS.map((joint) => ({
      ...joint,
      halves: joint.halves.map((half) => ({ ...half, packer: mm('17.7') })),
    }));
    const made = table.make(batch({ joints }));
    expect(printed(made).find((row) => row.Part === 'shelf')).toMatchObject({
      'Measure from': 'no stop',
      'Packer (mm)': '17.7',
    });
    expect(noted(made).join(' ')).toContain('packer');
  });

  it.each([
    [0, ''],
    [350, ''],
    ['272.3', "between places of the jig's stop, the nearest is 272.5"],
    [760, ''],
    ['760.5', "out of reach of the jig's stop: mark out"],
  ])('says what to do with a stop at %s', (at, remark) => {
    const joints = JOINTS.slice(0, 1).map((joint) => ({
      ...joint,
      halves: joint.halves.map((half) => ({ ...half, stop: half.stop && { ...half.stop, at: mm(at) } })),
    }));
    expect(printed(table.make(batch({ joints })))[0]?.Remark ?? '').toBe(remark);
  });

  it('is empty, without cautions, where nothing has a stop', () => {
    const made = table.make(batch({ joints: [] }));
    expect([made.rows, made.cautions]).toEqual([[], []]);
  });
});
