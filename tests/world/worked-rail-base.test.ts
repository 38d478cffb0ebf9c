import type { FitResult } from '@dryfit/engine';
import { beforeAll, describe, expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { boxOf, codesOf, exactly, halfOf, marksOf, partOf, sizeOf } from '../support/look.js';
import { fitExample } from '../support/read.js';

// Worked by hand in inches: 30 wide over sides of 23/32, 34 1/2 high and 23 1/4 deep; a toe space of 3 by 4 in as the
// trade's guides give it (thoughtco.com: 3 in deep; ess2go.com: 4 in high); a 3/4 in nailer behind a 1/4 in back
// (woodweb.com, 2003 and 2005).
describe('the rail base in inches, worked by hand', () => {
  let result: FitResult;
  beforeAll(async () => {
    result = await fitExample('rail-base.joinery', 'RailBase');
  });

  test.each([
    ['base', '28 9/16 x 23 1/4 x 23/32'],
    ['frontrail', '28 9/16 x 4 x 23/32'],
    ['rearrail', '28 9/16 x 4 x 23/32'],
    ['back', '29 1/4 x 7/32 x 30 1/8'],
    ['lh', '23/32 x 23 1/4 x 34 1/2'],
  ])('%s is %s', (part, size) => {
    expect(sizeOf(result, part, 'in')).toBe(size);
  });

  test('biscuits in the base are 3, 9, 15 and 21 in from the rear', () => {
    expect(marksOf(halfOf(result, 'base / lh', 'base'), 'in')).toEqual(['3', '9', '15', '21']);
    expect(marksOf(halfOf(result, 'base / lh', 'lh'), 'in')).toEqual(['3', '9', '15', '21']);
  });

  test('the front rail has no setback from its front datum', () => {
    const half = halfOf(result, 'frontrail / lh', 'frontrail');
    expect([half.datum, exactly(half.setback), half.spacer.kind]).toEqual(['front', '0', 'none']);
  });

  test('from the rear its spacer would be 19 1/4 in', async () => {
    const text = exampleText('rail-base.joinery').replace('datum front', 'datum rear');
    const other = await fitExample('rail-base.joinery', 'RailBase', {}, { 'rail-base.joinery': text });
    expect(exactly(halfOf(other, 'frontrail / lh', 'frontrail').setback, 'in')).toBe('19 1/4');
    expect(codesOf(other.findings)).toContain('spacer-absurd');
  });

  test('a first biscuit at 2 in would run into the back groove', async () => {
    // The slot: 7.5 to 11.5 mm from the underside and 50.8 ± 32.84 from the rear; the groove: down to 8.73 mm and from
    // 18.26 to 24.61 (a nailer of 23/32 in and a width of 1/4 in) from the rear.
    const shop = exampleText('shop.joinery').replace('first 3"  last 2 1/4"', 'first 2"  last 2 1/4"');
    const other = await fitExample('rail-base.joinery', 'RailBase', {}, { 'shop.joinery': shop });
    expect(codesOf(other.findings)).toContain('slots-collide');
    const groove = partOf(other, 'base').cuts.find((cut) => cut.kind === 'groove');
    if (!groove || !('box' in groove)) throw new Error('no groove in the base');
    const { lo, hi } = groove.box;
    const base = boxOf(other, 'base');
    expect(lo.z.sub(base.lo.z).toNumber()).toBeCloseTo(8.73, 2);
    const [slot] = halfOf(other, 'base / lh', 'base').slots;
    const reach = (slot?.centre.y.toNumber() ?? 0) + (slot?.length.value ?? 0) / 2;
    expect(reach - lo.y.toNumber()).toBeCloseTo(6.65, 1);
    expect(hi.y.sub(lo.y).toNumber()).toBeCloseTo(6.35, 9);
    expect(base.lo.z.toNumber() + 11.5 - lo.z.toNumber()).toBeCloseTo(2.77, 2);
  });

  test('it can be made', () => {
    expect(codesOf(result.findings)).toEqual([]);
  });
});
