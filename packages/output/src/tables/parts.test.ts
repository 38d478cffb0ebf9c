import { Rational } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { mm, PARTS, parameter, part, result, shop, source } from '../periodicals.fixture.js';
import { noted, printed } from '../table/printed.fixture.js';
import { table } from './parts.js';

const one = (more: Parameters<typeof result>[0] = {}, count = 1, errors = 0) => ({
  title: ['Periodicals'],
  items: [{ result: result(more), count }],
  errors,
});

describe('the cut list', () => {
  it('folds parts that are one piece, and sorts by material, then the largest first', () => {
    expect(
      printed(table.make(one())).map(
        (row) =>
          `${row.Pieces} ${row.Part}: ${row['Cut length (mm)']} x ${row['Cut width (mm)']} x ${row['Thickness (mm)']} ${row.Material}`,
      ),
    ).toEqual([
      '1 lh: 720 x 560 x 17.7 birch18',
      '1 rh: 720 x 560 x 17.7 birch18',
      '2 base, top: 564.6 x 560 x 17.7 birch18',
      '1 shelf: 564.6 x 538 x 17.7 birch18',
      '1 back: 699.6 x 579.6 x 5.8 ply6',
    ]);
  });

  it('multiplies by the count of a job and names the cabinet where there are several', () => {
    const small = result({ parameters: [parameter('wide', 450, true)], parts: PARTS.slice(0, 1) });
    const batch = {
      title: ['Library'],
      items: [
        { result: small, count: 2 },
        { result: result(), count: 4 },
      ],
      errors: 0,
    };
    const rows = printed(table.make(batch));
    expect(rows.filter((row) => row.Part === 'lh').map((row) => [row.Cabinet, row.Pieces])).toEqual([
      ['Periodicals (wide 450)', '2'],
      ['Periodicals', '4'],
    ]);
    expect(rows.find((row) => row.Part === 'base, top')?.Pieces).toBe('8');
  });

  it('tells cut size from finished size where there are bands', () => {
    const banded = part('shelf', 'level', [0, 800, 0, 284, 0, 18], {
      cutSize: { length: mm(800), width: mm(283), thickness: mm(18) },
      bands: [{ side: 'front', band: 'edge1', thickness: Rational.ONE }],
    });
    const made = table.make(one({ parts: [banded] }));
    expect(printed(made)).toEqual([
      {
        Part: 'shelf',
        Pieces: '1',
        Material: 'birch18',
        'Cut length (mm)': '800',
        'Cut width (mm)': '283',
        'Thickness (mm)': '18',
        Bands: 'front edge edge1 1',
        'Finished length (mm)': '800',
        'Finished width (mm)': '284',
      },
    ]);
    expect(noted(made)).toContain('Cut sizes are without the bands, finished sizes with them.');
  });

  it('lists the layers of a glued-up part, larger than finished', () => {
    const sheet = { name: 'birch18', source: source(), thickness: { value: mm(18) }, measured: { value: mm('17.7') } };
    const bench = {
      name: 'bench36',
      source: source(),
      thickness: { value: mm(36) },
      layers: ['birch18', 'birch18'],
      oversize: mm(10),
    };
    const materials = new Map([sheet, bench].map((material) => [material.name, material]));
    const top = part('bench', 'level', [0, 1500, 0, 600, 0, '35.4'], { material: 'bench36' });
    const made = result({ parts: [top] });
    const batch = {
      title: ['Bench'],
      items: [{ result: { ...made, spec: { ...made.spec, shop: { ...shop, materials } } }, count: 3 }],
      errors: 0,
    };
    expect(printed(table.make(batch)).map((row) => Object.values(row).join(' '))).toEqual([
      'bench 3 bench36 1500 600 35.4',
      'layers of bench 6 birch18 1510 610 17.7',
    ]);
  });

  it('says when a size is not fixed', () => {
    expect(printed(table.make(one({ parts: [part('loose', 'level', undefined)] })))[0]?.['Cut length (mm)']).toBe(
      'not fixed',
    );
  });

  it('warns when there are errors, and always carries the cautions', () => {
    const made = table.make(one({}, 1, 2));
    expect(made.warning).toBe('2 errors were found; do not cut or mill from this table.');
    expect(made.cautions.join(' ')).toMatch(/Isolate.*guard.*mask.*eye and ear.*manual and local rules/);
  });
});
