import { describe, expect, test } from 'vitest';
import { shopText } from '../support/fixture-shop.js';
import { codesOf } from '../support/look.js';
import { fitText } from '../support/read.js';

/** A divider with one shelf on either side at one height, each with one biscuit; they lie `apart` along the divider. */
const divider = (apart: string, skin: string) => `units mm
${shopText({ thickness: '18', plunge: '12.3', skin })}
cabinet Case {
  part lh, divider, rh : upright of board
  part one, other : level of board
  width 900 over lh and rh
  height 700 of lh, divider, rh
  depth 400 of lh, divider, rh
  divider.bottom flush with lh
  rh.bottom flush with lh
  divider.rear flush with lh
  rh.rear flush with lh
  divider.left 400 right of lh.right
  butt one between lh and divider {
    bottom 300 above lh.bottom
    flush front, rear
    connect plate by lines 100
    allow joint-can-rotate "for the figure"
  }
  butt other between divider and rh {
    bottom 300 above lh.bottom
    flush front, rear
    connect plate by lines 100 + ${apart}
    allow joint-can-rotate "for the figure"
  }
}
`;

// Plane geometry: discs of 100 plunged 12.3 from both faces of an 18 mm divider have their centres
// 18 + 2·(50 − 12.3) = 93.4 apart across it, so their arcs are k apart when √((100 + k)² − 93.4²) apart along it.
describe('biscuit slots back to back in a divider', () => {
  test.each([
    ['35.73', '0', false],
    ['35.72', '0', true],
    ['38.44', '1', false],
    ['38.43', '1', true],
    ['41', '2', false],
    ['40.99', '2', true],
    ['43.43', '3', false],
    ['43.42', '3', true],
  ])('%s apart with %s of material between: they collide: %s', async (apart, cover, collide) => {
    const { findings } = await fitText(divider(apart, cover));
    expect(codesOf(findings)).toEqual(collide ? ['slots-collide'] : []);
  });

  // The same spot from both faces leaves t − 2·p: 2.0 for a #0, −2.0 for a #10 in 18 mm.
  test.each([
    ['8', '2', false],
    ['8', '2.001', true],
    ['10', '0', true],
  ])('at one spot %s deep with %s of material between: they collide: %s', async (plunge, cover, collide) => {
    const text = divider('0', cover)
      .replaceAll('plunge 12.3', `plunge ${plunge}`)
      .replace('across 23mm', 'across 15mm')
      .replace('along 56mm', 'along 47mm');
    const { findings } = await fitText(text);
    expect(codesOf(findings)).toEqual(collide ? ['slots-collide'] : []);
  });
});
