import { describe, expect, it } from 'vitest';
import { biscuit, JOINTS, mm, parameter, result } from '../periodicals.fixture.js';
import { printed } from '../table/printed.fixture.js';
import { table } from './connectors.js';

describe('the table of connectors', () => {
  it('counts one connector for both halves of a slot', () => {
    const made = table.make({ title: ['Periodicals'], items: [{ result: result(), count: 1 }], errors: 0 });
    expect(printed(made)).toEqual([
      { Connector: 'biscuit20', Shape: 'biscuit', Size: '56 x 23 x 4', 'In one': '30', Cabinets: '1', Needed: '30' },
    ]);
  });

  it('multiplies for a job and sums over its cabinets', () => {
    const dowel = {
      ...biscuit,
      name: 'dowel8',
      shape: 'dowel',
      along: mm(8),
      thickness: mm(8),
      across: mm(30),
    } as const;
    const small = result({ parameters: [parameter('wide', 450, true)], joints: JOINTS.slice(0, 1) });
    const other = result({
      name: 'Plinth',
      joints: JOINTS.slice(0, 2).map((joint) => ({ ...joint, connector: dowel })),
    });
    const items = [
      { result: result(), count: 4 },
      { result: small, count: 2 },
      { result: other, count: 3 },
    ];
    const rows = printed(table.make({ title: ['Library'], items, errors: 0 }));
    expect(
      rows.map(
        (row) =>
          `${row.Cabinet}: ${row['In one'] ?? ''} x ${row.Cabinets ?? ''} = ${row.Needed} ${row.Connector} ${row.Size}`,
      ),
    ).toEqual([
      'Periodicals (wide 450): 5 x 2 = 10 biscuit20 56 x 23 x 4',
      'Periodicals: 30 x 4 = 120 biscuit20 56 x 23 x 4',
      'Plinth: 10 x 3 = 30 dowel8 8 dia x 30',
      'all:  x  = 130 biscuit20 56 x 23 x 4',
      'all:  x  = 30 dowel8 8 dia x 30',
    ]);
  });
});
