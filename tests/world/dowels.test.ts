import { describe, expect, test } from 'vitest';
import { codesOf } from '../support/look.js';
import { fitText } from '../support/read.js';

interface Wishes {
  readonly thickness: string;
  readonly measured?: string;
  readonly diameter: string;
  readonly wall: string;
  readonly skin?: string;
  readonly length?: string;
  readonly plunge?: string;
  readonly clearance?: string;
}

const dowelled = (wishes: Wishes): string => {
  const { thickness, measured, diameter, wall, skin = '0mm', length = '30mm', clearance = '0mm' } = wishes;
  const { plunge = '11mm in face, 21mm in edge' } = wishes;
  return `units mm
material board { thickness ${thickness}${measured ? `  measured ${measured}` : ''} }
machine borer { drill ${diameter}  base to centre 4mm to 20mm }
connector pin : dowel { diameter ${diameter}  length ${length}  plunge ${plunge}  clearance ${clearance}  by borer }
limits { slot to edge along the run 5mm  wall beside slot ${wall}  skin under slot ${skin} }
cabinet Case {
  part lh, rh : upright of board
  part shelf : level of board
  width 600mm over lh and rh
  height 700mm of lh, rh
  depth 300mm of lh, rh
  lh.bottom flush with rh
  lh.rear flush with rh
  butt shelf between lh and rh {
    bottom 300mm above lh.bottom
    flush front, rear
    centred in thickness
    connect pin by lines 40mm, 150mm, 260mm
  }
}
`;
};

// A trade forum of wood manufacturers (woodweb.com, "Dowel drilling and use guidelines", 1998): from the dowel to the
// face of the panel at least the dowel's radius, that is Ø ≤ t/2. A dowel maker (chicagodowel.com, technical page):
// about a third of the thickness and never above a half.
describe('a dowel in the edge of a board needs its own radius of wall', () => {
  test.each([
    ['18mm', '8mm', '4mm', false],
    ['18mm', '10mm', '5mm', true],
    ['16mm', '8mm', '4mm', false],
    ['3/4"', '3/8"', '3/16"', false],
    ['23/32"', '3/8"', '3/16"', true],
    ['23/32"', '5/16"', '5/32"', false],
  ])('%s board, %s dowel, wall %s: too thin: %s', async (thickness, diameter, wall, thin) => {
    const { findings } = await fitText(dowelled({ thickness, diameter, wall }));
    expect(codesOf(findings)).toEqual(thin ? ['thin-wall'] : []);
  });

  test('a board sold as 3/4 in that measures 23/32 in passes by its name and fails by its thickness', async () => {
    const text = dowelled({ thickness: '3/4"', measured: '23/32"', diameter: '3/8"', wall: '3/16"' });
    expect(codesOf((await fitText(text, 'nominal')).findings)).toEqual([]);
    expect(codesOf((await fitText(text, 'measured')).findings)).toEqual(['thin-wall']);
  });
});

// The same forum: two thirds of the length in the edge, one third in the face, and 1 mm more at the bottom of each
// hole with wet glue.
describe('depths of dowel holes', () => {
  const plain = { thickness: '18mm', diameter: '8mm', wall: '4mm' };

  test.each([
    ['an 8 × 30', '30mm', '11mm in face, 21mm in edge', '7mm'],
    ['an 8 × 40', '40mm', '40/3 mm + 1mm in face, 80/3 mm + 1mm in edge', '18mm - 43/3 mm'],
  ])(
    '%s leaves its millimetres and as much under the hole in an 18 mm face as it should',
    async (_, length, plunge, skin) => {
      const wishes = { ...plain, length, plunge, clearance: '2mm' };
      expect(codesOf((await fitText(dowelled({ ...wishes, skin }))).findings)).toEqual([]);
      const thin = await fitText(dowelled({ ...wishes, skin: `${skin} + 0.001mm` }));
      expect(codesOf(thin.findings)).toEqual(['slot-breaks-through']);
      const tight = await fitText(dowelled({ ...wishes, skin, clearance: '2.001mm' }));
      expect(codesOf(tight.findings)).toEqual(['joint-bottoms-out']);
    },
  );
});

// WOOD Magazine on mortises and tenons: a third of the stock where both parts are as thick. In 18 mm a tenon of 6 has
// 6 mm of wall, one of 8 has 5.
describe('a loose tenon in the edge of a board', () => {
  const tenoned = (thickness: string, bit: string, wall: string): string =>
    dowelled({ thickness, diameter: bit, wall })
      .replace(`machine borer { drill ${bit}`, `machine borer { bit ${bit}`)
      .replace(
        `: dowel { diameter ${bit}  length 30mm`,
        `: loose tenon { along 20mm  across 30mm  thickness ${bit}  slot 21mm`,
      );

  test.each([
    ['18mm', '6mm', '6mm'],
    ['18mm', '8mm', '5mm'],
    ['3/4"', '1/4"', '1/4"'],
  ])('%s board, %s tenon: a wall of exactly %s passes, a thousandth more does not', async (thickness, bit, wall) => {
    expect(codesOf((await fitText(tenoned(thickness, bit, wall))).findings)).toEqual([]);
    expect(codesOf((await fitText(tenoned(thickness, bit, `${wall} + 0.001mm`))).findings)).toEqual(['thin-wall']);
  });
});
