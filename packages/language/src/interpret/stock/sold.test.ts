import { render } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../../testing/files.fixture.js';

const CABINET =
  'cabinet Shelf {\n  part board : level of ply\n}\nmaterial ply { thickness 18 }\nmachine m { drill 8  base to centre 9 }\n';

async function read(settings: string, units = 'mm') {
  const text = `units ${units}\n${CABINET}${settings}`;
  const { cabinets, findings } = await new FilesInMemory({ 'a.joinery': text }).examine('a.joinery');
  const told = findings.map(({ code, message, source }) => {
    return `${code} at ${text.slice(source.start, source.end)}: ${render(message, { units: 'mm' })}`;
  });
  return { shop: cabinets[0]?.spec.shop, told };
}

const connector = (sold: string) => `connector peg : dowel { diameter 8mm  length 30mm  plunge 16mm  by m  ${sold} }`;
const sizes = (packs: readonly { size: unknown; text: string }[] | undefined) =>
  packs?.map(({ size, text }) => `${size} ${text}`);

describe('how things are sold', () => {
  test('packs are pieces, rolls mm and glue grams, whatever the units of the file', async () => {
    const { shop } = await read(
      `${connector('packs of 100, 1000  spare 2.5 %')}\nband b { thickness 1mm  oversize 20mm  rolls of 50 m, 150 ft }\nglue g { spread 150 g/m2  packs of 750 g, 5 kg, 1 lb, 8 oz }`,
      'in',
    );
    expect(sizes(shop?.connectors.get('peg')?.packs)).toEqual(['100 100', '1000 1000']);
    expect(String(shop?.connectors.get('peg')?.spare)).toBe('1/40');
    expect(sizes(shop?.bands.get('b')?.packs)).toEqual(['50000 50 m', '45720 150 ft']);
    expect(String(shop?.bands.get('b')?.oversize)).toBe('20');
    // A pound is 453.592 37 g exactly; an ounce a sixteenth of it.
    expect(sizes(shop?.glue?.packs)).toEqual([
      '750 750 g',
      '5000 5 kg',
      '45359237/100000 1 lb',
      '45359237/200000 8 oz',
    ]);
  });

  test('ounces on a square foot are grams on a square metre', async () => {
    const { shop } = await read('glue g { spread 1/2 oz/ft2 }');
    // 28.349523125 g / 2 / 0.09290304 m².
    expect(shop?.glue?.spread.toNumber()).toBeCloseTo(14.1747615625 / 0.09290304, 9);
  });

  test('is not known where nothing is written', async () => {
    const { shop } = await read(connector(''));
    const peg = shop?.connectors.get('peg');
    expect([peg?.packs, peg?.spare, shop?.glue]).toEqual([undefined, undefined, undefined]);
  });

  test.each([
    [connector('packs of 0'), /setting-wrong at 0: packs of connector peg hold a whole number of pieces above 0/],
    [connector('packs of 2.5'), /setting-wrong at 2.5: .*, and 2.5 is none/],
    [connector('packs of 100mm'), /setting-wrong at 100mm: .*, and 100mm is none/],
    [connector('packs of 100, 100'), /setting-wrong at 100: packs of 100 are written twice for connector peg/],
    [connector('packs of 100  packs of 200'), /written-twice at 200: packs is written twice/],
    [connector('packs of -5'), /syntax at -: expected a number after `of`, found `-`/],
    [connector('packs of 10 kg'), /syntax at kg: `kg` is no setting of a connector, which takes .*`packs`, `spare`/],
    [connector('spare 101 %'), /setting-wrong at 101: the spare of connector peg is from 0 to 100 %/],
    [connector('spare 5mm %'), /setting-wrong at 5mm: the spare/],
    [connector('spare 5'), /syntax at }: expected `%` after `5`, found `}`/],
    ['band b { thickness 1  rolls of 0 m }', /setting-wrong at 0 m: rolls of band b hold a figure above 0 in m/],
    ['band b { thickness 1  rolls of 50 }', /syntax at .*`m` or `ft` after the figure/],
    [
      'glue g { packs of 1000 g, 1 kg  spread 150 g/m2 }',
      /setting-wrong at 1 kg: .*twice for glue g: 1000 g is as much/,
    ],
    [
      'glue g { spread 0.15 g/m2 }',
      /setting-wrong at 0.15 g\/m2: glue g is spread at 20 to 1000 g\/m2, and 0.15 is not/,
    ],
    ['glue g { spread 15 oz/ft2 }', /setting-wrong at 15 oz\/ft2: glue g is spread at 0.066 to 3.3 oz\/ft2/],
    ['glue g { packs of 5 kg }', /setting-missing at g: glue g has no spread/],
    ['glue g { spread 150 g/m2 }\nglue h { spread 150 g/m2 }', /duplicate-name at glue: a file describes one glue/],
    [
      'glue g { spreads 150 g/m2 }',
      /syntax at spreads: .*no setting of a glue, which takes `spread`, `packs`, `spare`/,
    ],
    ['glue { spread 150 g/m2 }', /syntax at .*expected a name for the glue/],
  ])('what makes no sense is told where it stands: %s', async (settings, message) => {
    expect((await read(settings)).told.join('\n')).toMatch(message);
  });
});
