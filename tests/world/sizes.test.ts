import { formatLength } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { solveSpec } from '../../packages/engine/src/sizes/solved.js';
import { exactly, partOf, sizeOf } from '../support/look.js';
import { fitText } from '../support/read.js';
import { inch, mm } from '../support/spelling.js';

const sides = (width: string, thickness: string, units = 'mm') => `units ${units}
material board { thickness ${thickness} }
cabinet Case {
  part lh, rh : upright of board
  part shelf : level of board
  width ${width} over lh and rh
  height 30 of lh, rh
  depth 12 of lh, rh
  lh.bottom flush with rh
  lh.rear flush with rh
  butt shelf between lh and rh { bottom 2 above lh.bottom  flush front, rear  connect none "for the figure" }
}
`;

/** How far the opening between the sides may stray. */
async function stray(text: string): Promise<string[]> {
  const solved = solveSpec((await fitText(text)).spec);
  const { planes } = solved.system;
  const { plus, minus } = solved.stray(planes.side('rh', 'left'), planes.side('lh', 'right'));
  return [exactly(solved.extent('shelf', 'x')), exactly(plus), exactly(minus)];
}

// Worst case T = Σ |aᵢ|·Tᵢ: F. Scholz, "Tolerance Stack Analysis Methods", Boeing 1995. Thickness ± 0.3 mm is a maker's
// figure for particleboard to EN 312, + 0.7 / − 0.9 mm another's for sanded 18 mm plywood.
describe('the opening between two sides, worst case as by Scholz 1995', () => {
  test('600 ± 0.5 over sides of 18 ± 0.3 is 564 ± 1.1', async () => {
    expect(await stray(sides('600 ± 0.5', '18 ± 0.3'))).toEqual(['564', '1.1', '1.1']);
  });

  test('600 ± 0.5 over sides of 18 + 0.7 − 0.9 is 562.1 to 566.3', async () => {
    // 564 + 0.5 + 2·0.9 and 564 − 0.5 − 2·0.7.
    expect(await stray(sides('600 ± 0.5', '18 plus 0.7 minus 0.9'))).toEqual(['564', '2.3', '1.9']);
  });
});

// ehow.co.uk on building wall cabinets: a 30 in cabinet with 3/4 in sides has inside parts of 28 1/2 in.
test('inside parts of a 30 in cabinet with 3/4 in sides are 28 1/2 in', async () => {
  expect(sizeOf(await fitText(sides('30', '3/4', 'in')), 'shelf', 'in')).toBe('28 1/2 x 12 x 3/4');
});

// NBS Circular 572, addendum of January 1960: an inch is 25.4 mm exactly from 1 July 1959.
describe('inches, NBS 1960', () => {
  test.each([
    ['23/32', '18.25625'],
    ['3/4', '19.05'],
    ['0.703', '17.8562'],
    ['1/32', '0.79375'],
    ['1/64', '0.396875'],
  ])('%s in is %s mm', async (thickness, metric) => {
    const result = await fitText(sides('30', `${thickness} in`, 'in'));
    expect(exactly(partOf(result, 'lh').extent.x)).toBe(metric);
  });

  test('7 3/16 + 3 5/32 − 23/32 in is 9 5/8 in', async () => {
    const result = await fitText(sides('7 3/16 + 3 5/32 - 23/32 + 2 * 3/4"', '3/4', 'in'));
    expect(exactly(partOf(result, 'shelf').extent.x, 'in')).toBe('9 5/8');
  });

  // Rounding half up by hand: what is printed, and what was rounded away (printed minus exact).
  test.each([
    ['18', 32, '23/32', '0.25625'],
    ['18', 64, '45/64', '-0.140625'],
    ['32', 32, '1 1/4', '-0.25'],
    ['32', 64, '1 17/64', '0.146875'],
    ['37', 32, '1 15/32', '0.30625'],
    ['37', 64, '1 29/64', '-0.090625'],
    ['5', 32, '3/16', '-0.2375'],
    ['5', 64, '13/64', '0.159375'],
    ['4', 32, '5/32', '-0.03125'],
  ])('%s mm to 1/%s in is %s, off by %s mm', (length, denominator, text, off) => {
    const printed = formatLength(mm(length), { units: 'in', denominator });
    expect(printed.text.replace('"', '').trim()).toBe(text);
    expect(exactly(inch(text).sub(mm(length)))).toBe(off);
    expect(exactly(printed.lost.neg())).toBe(off);
  });
});
