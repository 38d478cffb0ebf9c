import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { workOut } from '../pipeline.js';
import { across, flush, outer, reference } from '../testing/joint-items.js';
import { material, shop } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { mm } from '../testing/written.js';
import { AsMade } from './as-made.js';
import type { Contributor } from './contributor.js';
import { cornersOf, straightened } from './curve.js';
import { mitreErrors } from './mitre-errors.js';

const source = { uri: 'test:shop.joinery', start: 0, end: 1 };
const DEGREE = Math.PI / 180;

function mitre(from: 'outer' | 'inner', thickness = '18 ± 0.4', degrees = '0.25') {
  const stock = shop({
    materials: [material('board', thickness)],
    tolerances: {
      source,
      mitre: { degrees: mm(degrees), source },
      dirt: { most: mm('0.1'), source },
      reckon: 'worst case',
    },
  });
  const spec = sides(stock)
    .part('top', 'level', 'board')
    .joint(
      'mitre',
      'top',
      'between lh and rh',
      outer('top'),
      flush('rear', 'front'),
      reference(from),
      across(17),
      (draft, places) => {
        draft.connect = { kind: 'by', connector: 'biscuit20', pattern: 'deep5', source: places.source() };
      },
    )
    .build();
  const { fit, solved } = workOut({ ...spec, parts: spec.parts.map((part) => ({ ...part, material: 'board' })) });
  const [joint] = fit.joints;
  const errors = joint && mitreErrors(new AsMade({ ...spec }, solved, fit), joint);
  if (!errors) throw new Error('no mitre');
  return errors;
}

type Point = readonly [number, number];

/**
 * The corner drawn out: a part lies along its outer face from the toe at the origin, sawn at its bevel, and its heel is
 * where the inner face meets the cut. The host is the same turned by the corner's 90° and mirrored.
 */
function heel(thickness: number, bevel: number): Point {
  return [thickness * Math.tan(bevel * DEGREE), thickness];
}
const length = ([x, y]: Point) => Math.hypot(x, y);

describe('a mitre', () => {
  test('opens at the heel by the distance of one heel from the line of the other face, when the toes touch', () => {
    const { opening, heels } = mitre('outer');
    fc.assert(
      fc.property(
        fc.float({ min: Math.fround(-0.4), max: Math.fround(0.4), noNaN: true }),
        fc.float({ min: Math.fround(-0.4), max: Math.fround(0.4), noNaN: true }),
        fc.float({ min: Math.fround(-0.25), max: Math.fround(0.25), noNaN: true }),
        fc.float({ min: Math.fround(-0.25), max: Math.fround(0.25), noNaN: true }),
        (t1, t2, b1, b2) => {
          const offs: Readonly<Record<string, number>> = {
            'thickness top 0': t1,
            'thickness lh 0': t2,
            'bevel top / lh top': b1,
            'bevel top / lh lh': b2,
          };
          const off = (of: readonly Contributor[]) => of.map(({ id }) => offs[id] ?? Number.NaN);
          const [a, b] = [heel(18 + t1, 45 + b1), heel(18 + t2, 45 + b2)];
          // The host's heel in the entering part's frame: its outer face stands square on the entering part's.
          const other: Point = [b[1], b[0]];
          const longest = length(a) > length(other) ? a : other;
          const line = longest === a ? other : a;
          const gap = (longest[0] * line[1] - longest[1] * line[0]) / length(line);
          const signed = longest === a ? gap : -gap;
          expect(opening.at(off(opening.of))).toBeCloseTo(signed, 9);
          expect(heels.at(off(heels.of))).toBeCloseTo(length(a) - length(b), 9);
        },
      ),
    );
  });

  test('has its toes together whatever the sheets when both halves are measured from the toe, and not from the heel', () => {
    const toe = mitre('outer').toes;
    expect(toe.of.map(({ origin }) => origin)).toEqual(['dirt', 'dirt']);
    const heelside = mitre('inner').toes;
    const sheets = straightened(heelside).contributions.filter(({ of }) => of.origin === 'thickness');
    // A face at 45° is √2 as long as the sheet is thick.
    expect(sheets.map(({ coefficient }) => Math.abs(coefficient))).toEqual([
      expect.closeTo(Math.SQRT2, 6),
      expect.closeTo(Math.SQRT2, 6),
    ]);
    expect(cornersOf(toe).most).toBeCloseTo(0.1, 9);
    expect(cornersOf(heelside).most).toBeCloseTo(0.1 + 0.8 * Math.SQRT2, 6);
  });

  test('opens no further than both bevels off together, over the longest face', () => {
    const { least, most, found } = cornersOf(mitre('outer').opening);
    const face = 18.4 / Math.cos(45.25 * DEGREE);
    expect(found).toBe('every corner');
    expect(most).toBeCloseTo(face * Math.sin(0.5 * DEGREE), 9);
    expect(least).toBeCloseTo((-18.4 / Math.cos(44.75 * DEGREE)) * Math.sin(0.5 * DEGREE), 9);
  });
});

test('the corners of a curve with many contributors are those that its slopes point to', () => {
  const many = Array.from(
    { length: 15 },
    (_, i): Contributor => ({
      id: `c${i}`,
      origin: 'saw',
      words: [`c${i}`],
      plus: mm('0.2'),
      minus: mm('0.1'),
    }),
  );
  const factors = many.map((_, i) => (i % 3) - 1);
  const at = (off: readonly number[]) => Math.exp(off.reduce((sum, x, i) => sum + x * (factors[i] ?? 0), 0) / 10);
  const { least, most, found } = cornersOf({ of: many, at });
  const up = factors.reduce((sum: number, f) => sum + (f > 0 ? 0.2 : f < 0 ? 0.1 : 0), 0);
  const down = factors.reduce((sum: number, f) => sum + (f > 0 ? -0.1 : f < 0 ? -0.2 : 0), 0);
  expect(found).toBe('by the slopes');
  expect(most).toBeCloseTo(Math.exp(up / 10), 9);
  expect(least).toBeCloseTo(Math.exp(down / 10), 9);
});
