import { type CapturedPanel, growth, Rational, ruleHolds, solidWood } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { codesOf } from '../support/look.js';
import { fitText } from '../support/read.js';

const exact = (text: string): Rational => Rational.parse(text) ?? Rational.ZERO;
const grown = (width: string, coefficient: string, from: number, to: number): number =>
  growth(exact(width), exact(coefficient), Rational.of(from), Rational.of(to)).toNumber();

describe('movement across the grain', () => {
  // Wood Handbook FPL-GTR-190 (2010), chapter 13, the example after equation 13-2: white fir, flat-sawn, 232 mm wide, from
  // 8 to 11 %: 233.7 mm; in inches 9.15 becomes 9.217. The coefficient .00245 follows from the answer.
  test('the worked example of the Wood Handbook', () => {
    expect(232 + grown('232', '0.00245', 8, 11)).toBeCloseTo(233.7, 1);
    expect(9.15 + grown('9.15', '0.00245', 8, 11)).toBeCloseTo(9.217, 3);
  });

  // Coefficients of table 13-5 of the same: red oak .00369 and .00158, black cherry .00248 and .00126, tangential and radial.
  test.each([
    ['red oak, flat-sawn, 12 in', '12', '0.00369', 6, 10, 0.17712],
    ['red oak, quarter-sawn, 12 in', '12', '0.00158', 6, 10, 0.07584],
    ['black cherry, flat-sawn, 300 mm', '300', '0.00248', 8, 12, 2.976],
    ['black cherry, quarter-sawn, 300 mm', '300', '0.00126', 8, 12, 1.512],
  ])('%s', (_, width, coefficient, from, to, by) => {
    expect(grown(width, coefficient, from, to)).toBeCloseTo(by, 6);
  });

  // WOOD magazine, September 2021: alder 8 in wide over 6 points moves 1/8 in, with .0026.
  test('a magazine’s example', () => {
    expect(grown('8', '0.0026', 6, 12)).toBeCloseTo(0.1248, 6);
  });

  test('the rule is for 6 to 14 %', () => {
    const moisture = (least: number, most: number, made: number) => ({
      least: Rational.of(least),
      most: Rational.of(most),
      made: Rational.of(made),
    });
    expect(ruleHolds(moisture(6, 14, 8))).toBe(true);
    expect(ruleHolds(moisture(5, 14, 8))).toBe(false);
    expect(ruleHolds(moisture(6, 15, 8))).toBe(false);
  });
});

/** A case of sheet with a solid back whose grain stands upright; the back comes out 232 wide. */
const box = (facts: string, clearance = '0.5', moisture = '') => `units mm
import "shop.joinery"
material fir12 { thickness 12  measured 12  movement 0.00245 per % }
cabinet Box {
  part lh, rh : upright of birch18
  part top, base : level of birch18
  part back : facing of fir12
  width 232 - 16 + 2 * ${clearance} between lh and rh
  height 400 of lh
  depth 200 of lh
  ${moisture}
  connect biscuit20 by lines 70, 150
  butt top between lh and rh { flush top, rear, front }
  butt base between lh and rh { flush bottom, rear, front }
  groove back between lh and rh, base and top { rear set back 16 from lh  width 12.2  depth 8  clearance ${clearance} ${facts} }
}
`;

describe('a solid panel in grooves', () => {
  const panel = async (text: string): Promise<CapturedPanel> => {
    const { spec, fit } = await fitText(text);
    const found = solidWood(spec, fit).find((one): one is CapturedPanel => one.kind === 'captured');
    if (!found) throw new Error('no panel in grooves');
    return found;
  };

  test('swells and shrinks as the handbook says', async () => {
    const { swells, shrinks, width } = await panel(box('', '0.5', 'moisture 6 to 11 % made at 8 %'));
    expect(width.toNumber()).toBe(232);
    expect(swells.toNumber()).toBeCloseTo(1.7052, 6);
    expect(shrinks.toNumber()).toBeCloseTo(232 * 0.00245 * 2, 6);
  });

  test('needs room for what it swells and no more', async () => {
    // 232 · 0.00245 · 3 / 2 = 0.8526 at each side.
    expect(codesOf((await fitText(box('', '0.85'))).findings)).toContain('wood-moves');
    expect(codesOf((await fitText(box('', '0.853'))).findings)).not.toContain('wood-moves');
  });

  test('keeps within grooves that hold it when it has shrunk', async () => {
    // Slid to one side, 8 deep less twice the clearance less what it shrinks is what holds it: 8 − 2·c − 1.1368.
    expect((await panel(box('', '3.4'))).hold.toNumber()).toBeCloseTo(8 - 6.8 - 1.1368, 6);
    expect(codesOf((await fitText(box('', '3.4'))).findings)).not.toContain('wood-moves');
    expect(codesOf((await fitText(box('', '3.5'))).findings)).toContain('wood-moves');
  });

  test('is not reckoned beyond the rule, and that is told', async () => {
    const codes = codesOf((await fitText(box('', '0.5', 'moisture 4 to 11 % made at 8 %'))).findings);
    expect(codes).toContain('moisture-out-of-range');
    expect(codes).not.toContain('wood-moves');
  });
});

/** A solid seat between two sides, glued along its ends; the sides are of sheet, or of the same wood. */
const seat = (sides: string, deep: number, grain = '') => `units mm
import "shop.joinery"
material oak18 { thickness 18  measured 18  movement 0.00365 per % }
cabinet Seat {
  part lh, rh : upright of ${sides}
  part seat : level of oak18 ${grain}
  width 600 over lh and rh
  height 400 of lh, rh
  depth ${deep} of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  butt seat between lh and rh { flush top, rear, front  connect biscuit20 by lines 60, 130 }
}
`;

describe('glued across the grain', () => {
  // 3 points of swing on 0.00365 let 91.3 mm of a joint differ by 1.
  test('a short joint passes and a long one does not', async () => {
    expect(codesOf((await fitText(seat('birch18', 300))).findings)).toContain('wood-moves');
    expect(codesOf((await fitText(seat('birch18', 91))).findings)).not.toContain('wood-moves');
  });

  test('boards whose grain runs the same way round the corner move together', async () => {
    expect(codesOf((await fitText(seat('oak18', 300))).findings)).not.toContain('wood-moves');
  });

  test('a board with its grain along the joint does not move along it', async () => {
    expect(codesOf((await fitText(seat('birch18', 300, 'grain depth'))).findings)).not.toContain('wood-moves');
  });
});
