import { describe, expect, test } from 'vitest';
import { oneShelf } from '../support/fixture-shop.js';
import { codesOf, halfOf } from '../support/look.js';
import { fitText } from '../support/read.js';

// Plane geometry: a disc of diameter D plunged p deep leaves a slot 2·√(p·(D − p)) long at the surface. Cutters of
// 100 mm (4 in nominal, 102 mm also quoted): encyclopaedia lists of biscuit joiners. Plunges 8, 10 and 12.3 mm for
// #0, #10 and #20: trade figures, from memory.
describe('length of a biscuit slot at the surface', () => {
  test.each([
    ['100', '8', 54.2586],
    ['100', '10', 60],
    ['100', '12.3', 65.6874],
    ['101.6', '8', 54.7284],
    ['101.6', '10', 60.531],
    ['101.6', '12.3', 66.2839],
    ['102', '8', 54.8452],
    ['102', '10', 60.663],
    ['102', '12.3', 66.4322],
  ])('cutter %s, plunge %s', async (cutter, plunge, length) => {
    const result = await fitText(oneShelf({ cutter, plunge, across: '15', along: '47' }));
    const slot = halfOf(result, 'shelf / lh', 'lh').slots[0];
    expect(slot?.length.value).toBeCloseTo(length, 4);
    expect(slot?.length.error).toBeLessThan(1e-9);
  });

  // Encyclopaedia list and trade pages: #0 47 × 15, #10 53 × 19, #20 56 × 23 mm; #20 also 60 × 23 in a wood-products
  // journal (jfwp.ut.ac.ir/article_60615).
  test.each([
    ['#0', '47', '15', '8'],
    ['#10', '53', '19', '10'],
    ['#20', '56', '23', '12.3'],
    ['#20 by the journal', '60', '23', '12.3'],
  ])('%s (%s × %s) goes in at plunge %s and leaves room for glue', async (_, along, across, plunge) => {
    const result = await fitText(oneShelf({ along, across, plunge }));
    expect(codesOf(result.findings)).toEqual([]);
  });

  // The inverse: a length of 56 needs (100 − √(100² − 56²))/2 = 8.5754.
  test.each([
    ['8.576', false],
    ['8.575', true],
  ])('a biscuit 56 long at plunge %s is too long: %s', async (plunge, tooLong) => {
    const result = await fitText(oneShelf({ along: '56', across: '17', plunge }));
    expect(codesOf(result.findings).includes('connector-too-long')).toBe(tooLong);
  });
});
