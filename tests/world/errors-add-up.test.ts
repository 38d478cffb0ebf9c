import {
  type Contributor,
  type Curve,
  cornersOf,
  diagonalDifference,
  ifMeasured,
  Rational,
  reckon,
  rootSumSquare,
  type Stack,
  slopesOf,
  straightened,
  type Tried,
  tryOut,
  worstCase,
} from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { fitText } from '../support/read.js';

const DEGREE = Math.PI / 180;

function stackOf(adds: Tried | undefined): Stack {
  if (!adds || !('stack' in adds)) throw new Error('no sum');
  return adds.stack;
}

// From memory: the opening between two sides is what lies over them less two thicknesses; unequal tolerances stray
// about the middle of their range (F. Scholz, "Tolerance Stack Analysis Methods", Boeing 1995, abstract and glossary).
describe('the opening between two sides that stand on a base as wide as the case', () => {
  const opening = async (thickness: string) => {
    const { spec } = await fitText(`units mm
material board { thickness ${thickness} }
cabinet Case {
  part lh, rh : upright of board
  part base   : level of board
  width 600 ± 0.5 of base
  depth 300 of base, lh, rh
  height 400 of lh, rh
  butt lh to base.top { flush left, front  connect none "for the figure" }
  butt rh to base.top { flush right, front  connect none "for the figure" }
}
`);
    const found = reckon(spec).openings.find(({ from, to }) => from.part === 'lh' && to.part === 'rh');
    if (!found) throw new Error('no opening between the sides');
    const { least, most } = worstCase(stackOf(found.adds));
    const { middle, half } = rootSumSquare(stackOf(found.adds));
    const from = (off: Rational) => found.length.add(off).toString();
    return {
      length: found.length.toString(),
      least: from(least),
      most: from(most),
      middle: from(middle),
      half: half.value,
    };
  };

  test('600 ± 0.5 over sides of 18 ± 0.3', async () => {
    expect(await opening('18 ± 0.3')).toMatchObject({
      length: '564',
      least: '5629/10',
      most: '5651/10',
      middle: '564',
    });
    expect((await opening('18 ± 0.3')).half).toBeCloseTo(0.6557, 4);
  });

  test('sanded sheets, 18 plus 0.7 minus 0.9: wider by the middle, and further', async () => {
    const found = await opening('18 plus 0.7 minus 0.9');
    expect(found).toMatchObject({ length: '564', least: '5621/10', most: '5663/10', middle: '2821/5' });
    expect(found.half).toBeCloseTo(1.2369, 4);
  });
});

// The one-way clutch of K. Chase and co-workers, used in many articles on tolerance analysis; its input figures from
// memory, consistent with the 7.0184° they give. Outputs worked anew.
describe('the one-way clutch: the angle of a roller between hub and ring', () => {
  const dimension = (id: string, tenThousandths: number): Contributor => ({
    id,
    origin: 'written',
    words: [id],
    plus: Rational.of(tenThousandths, 10_000),
    minus: Rational.of(tenThousandths, 10_000),
  });
  const clutch: Curve = {
    of: [dimension('hub', 125), dimension('roller', 100), dimension('ring', 125)],
    at: ([a = 0, c = 0, e = 0]) => Math.acos((27.645 + a + 11.43 + c) / (50.8 + e - (11.43 + c))) / DEGREE,
  };

  test('straightened: nominal, slopes, worst case and root sum square', () => {
    expect(clutch.at([0, 0, 0])).toBeCloseTo(7.01839, 5);
    const slopes = slopesOf(clutch).map((slope) => slope * DEGREE);
    for (const [i, slope] of [-0.207877, -0.414196, 0.206319].entries()) expect(slopes[i]).toBeCloseTo(slope, 5);
    const line = straightened(clutch);
    expect(line.worst).toBeCloseTo(0.533963, 5);
    expect(line.half).toBeCloseTo(0.316733, 5);
    expect(line.contributions.map(({ of }) => of.id)).toEqual(['roller', 'hub', 'ring']);
  });

  test('at its corners: less below than above would be if it were straight', () => {
    const corners = cornersOf(clutch);
    expect(corners.least).toBeCloseTo(6.462183, 6);
    expect(corners.most).toBeCloseTo(7.533264, 6);
    expect(corners.found).toBe('every corner');
  });

  test('tried 400 000 times', () => {
    const samples = 400_000;
    const [tried] = tryOut([{ tried: { curve: clutch } }], samples, 1);
    const sigma = 0.316733 / 3;
    expect(Math.abs((tried?.mean ?? 0) - 7.0178)).toBeLessThan(0.00005 + (5 * sigma) / Math.sqrt(samples));
    expect(Math.abs((tried?.deviation ?? 0) - 0.10547)).toBeLessThan(0.000005 + (5 * sigma) / Math.sqrt(2 * samples));
  });
});

// The principle of measuring both halves from one face: "Popular Woodworking" no. 133; figures worked by hand.
describe('a shelf with its underside at 300', () => {
  const shelf = (facts: string, thickness = '18 ± 0.4') =>
    fitText(`units mm
material board { thickness ${thickness} }
machine joiner { cutter 100  kerf 4  base to centre 9 }
connector plate : biscuit { along 47  across 15  thickness 4  plunge 8  by joiner }
cabinet Case {
  part lh, rh : upright of board
  part base   : level of board
  part shelf  : level of board
  width 600 over lh and rh
  depth 300 of lh, rh
  height 700 of lh, rh
  connect plate by lines 80, 220
  butt base between lh and rh { flush bottom, front, rear }
  butt shelf between lh and rh {
    bottom 300 above lh.bottom
    flush front, rear
    ${facts}
  }
}
`);
  const placeOf = async (facts: string) => {
    const { spec } = await shelf(facts);
    return reckon(spec)
      .joints.find(({ joint }) => joint.id === 'shelf / lh')
      ?.errors.find(({ kind }) => kind === 'place');
  };

  test('has its slots in the side at 309 whatever the sheet, and the sheet does not move it', async () => {
    for (const thickness of ['18', '17.6', '18.4']) {
      const { fit } = await shelf('reference bottom', thickness);
      const half = fit.joints.find(({ id }) => id === 'shelf / lh')?.halves.find(({ role }) => role === 'face');
      expect(half?.slots.map(({ centre }) => centre.z.toString())).toEqual(['309', '309']);
    }
    expect(stackOf((await placeOf('reference bottom'))?.adds).terms).toEqual([]);
  });

  test('in a batch of 17.6 has its slots at 308.8 if they are centred in the thickness: 0.2 from those milled for 18', async () => {
    const { spec } = await shelf('reference bottom  centred in thickness');
    const other = ifMeasured(spec, new Map([['board', Rational.of(88, 5)]]));
    const half = other.fit.joints.find(({ id }) => id === 'shelf / lh')?.halves.find(({ role }) => role === 'face');
    expect(half?.slots.map(({ centre }) => centre.z.toString())).toEqual(['1544/5', '1544/5']);
    const reset = other.reset.filter(({ what, joint }) => what === 'across' && joint === 'shelf / lh');
    expect(reset.map(({ part, change }) => `${part} ${change.to.sub(change.from)}`)).toEqual(['shelf -1/5', 'lh -1/5']);
  });

  test('keeps its slots where they are in a batch of 17.6 if they are measured from its underside', async () => {
    const { spec } = await shelf('reference bottom');
    const other = ifMeasured(spec, new Map([['board', Rational.of(88, 5)]]));
    expect(other.reset).toEqual([]);
    // 0.4 thinner sides leave 0.8 more between them.
    expect(other.recut.map(({ part, size, change }) => `${part} ${size} ${change.to.sub(change.from)}`)).toEqual([
      'base length 4/5',
      'shelf length 4/5',
    ]);
  });
});

// Plane geometry: a case of like sides that leans by s has diagonals √((W + s)² + H²) and √((W − s)² + H²).
describe('squareness by diagonals', () => {
  test.each([
    [600, 720, 1, 1.28037],
    [600, 720, 1.44, 1.8437],
    [2440, 1220, 2.44, 4.3648],
  ])('%d × %d that leans by %d', (width, height, lean, difference) => {
    const like = { top: width, base: width, left: height, right: height, lean };
    expect(diagonalDifference(like)).toBeCloseTo(difference, 4);
    expect(diagonalDifference({ ...like, lean: -lean })).toBeCloseTo(-difference, 4);
  });

  test('a case whose corners are 2 in 1000 out of square', async () => {
    const { spec } = await fitText(`units mm
material board { thickness 18 }
tolerances { square 2 over 1000 }
cabinet Case {
  part lh, rh    : upright of board
  part top, base : level of board
  width 600 over lh and rh
  depth 300 of lh, rh
  height 720 of lh
  butt top between lh and rh { flush top, front, rear  connect none "for the figure" }
  butt base between lh and rh { flush bottom, front, rear  connect none "for the figure" }
}
`);
    const { squareness } = reckon(spec);
    if (!squareness) throw new Error('no case');
    const { least, most, planned } = cornersOf(squareness.difference);
    expect(planned).toBeCloseTo(0, 9);
    expect(most).toBeCloseTo(1.8437, 4);
    expect(least).toBeCloseTo(-1.8437, 4);
  });
});
