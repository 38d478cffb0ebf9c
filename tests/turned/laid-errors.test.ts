import { contributorsIn, ifCutAsPlanned, Rational, type Result, reckon, resultsOf } from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { generator } from '../support/random.js';
import { fitText } from '../support/read.js';
import type { Corner } from './corner.js';
import { amount, looseText, number, type Shop, shops, units } from './loose.js';
import { MadeUnit } from './made-unit.js';

/** The unit with its face laid on the cant from outside, by slots or by glue alone, and nothing mitred to it. */
async function laid(corner: Corner, shop: Shop, glued: boolean, loose: string) {
  const { wide, deep, legX, legY } = corner;
  const thick = 17.7;
  const text = looseText(corner, shop)
    .replace(/ {2}mitre face .*\n/, '')
    .replace(`depth ${legY} }`, `depth ${legY} ${loose} }`)
    .replace(
      'butt face between base and top',
      `butt face to base.cant { flush bottom  ${glued ? 'connect none "glued"' : ''} }
  height 500 of face
  width ${(Number(wide) - thick - Number(legX)).toFixed(4)} of stub
  depth ${(Number(deep) - thick - Number(legY)).toFixed(4)} of end`,
    );
  const { spec, fit } = await fitText(text);
  const outside = resultsOf(reckon(spec)).filter(({ id }) => id.startsWith('outside') && id.includes('face'));
  return {
    spec,
    fit,
    outside,
    unit: (off: (name: string) => number) => new MadeUnit(corner, fit, shop === 'a jig', off),
  };
}

describe('a turned part laid on its cant from outside', () => {
  const wishes = fc.tuple(units, shops, fc.boolean(), fc.integer({ min: 1, max: 1e6 }));

  test('brings its corner to the outside sizes, as far out as the built unit has it', async () => {
    await fc.assert(
      fc.asyncProperty(wishes, async ([corner, shop, glued, seed]) => {
        const { fit, outside, unit } = await laid(corner, shop, glued, '');
        const random = generator(seed);
        const known = new Map<string, number>();
        const off = (name: string): number => {
          if (!known.has(name)) known.set(name, random() - 0.5);
          return known.get(name) ?? 0;
        };
        const [planned, made] = [unit(() => 0), unit(off)];
        expect(outside.map(({ about }) => about.kind === 'outside' && about.distance.axis)).toEqual(['x', 'y', 'z']);
        for (const [i, axis] of (['x', 'y'] as const).entries()) {
          const { adds, about } = outside[i] as Result;
          const size = planned.outside(i as 0 | 1);
          expect(about.kind === 'outside' && about.distance.length.toNumber()).toBeCloseTo(size, 2);
          expect(fit.outside?.[axis].toNumber()).toBeCloseTo(size, 2);
          expect(amount(adds, off), axis).toBeCloseTo(made.outside(i as 0 | 1) - size, 8);
        }
      }),
      { numRuns: 16 },
    );
  });

  test("takes a tolerance that is written for a leg of the cant instead of the saw's", async () => {
    const corner: Corner = { x: 'right', y: 'front', wide: 700, deep: 640, legX: 310, legY: 190.5 };
    const { outside, unit } = await laid(corner, 'none', false, '± 0.6');
    const [width] = outside as [Result];
    const of = contributorsIn(width.adds).filter(({ id }) => id.includes('cant of base'));
    expect(of.map(({ origin, plus }) => `${origin} ${plus}`)).toEqual(['written 3/5']);
    const written = of[0]?.id ?? '';
    expect(contributorsIn(width.adds).map(({ id }) => id)).not.toContain('saw base.cant y');
    const moved = unit((name) => (name === 'saw base.cant y' ? 0.6 : 0)).outside(0) - unit(() => 0).outside(0);
    expect(amount(width.adds, (name) => (name === written ? 0.6 : 0))).toBeCloseTo(moved, 8);
    expect(Math.abs(moved)).toBeGreaterThan(0.01);
  });

  test('makes the cabinet as much smaller in a thinner batch as its face is thinner, by the sine of the cant', async () => {
    const corner: Corner = { x: 'right', y: 'front', wide: 700, deep: 640, legX: 300, legY: 225 };
    const { spec } = await laid(corner, 'none', false, '');
    const moved = ifCutAsPlanned(spec, new Map([['board', Rational.of(174, 10)]]));
    const by = new Map(moved.map(({ result, by: off }) => [result.id, number(off)]));
    // Legs of 300 and 225 make a cant of 375; its face looks 0.6 to the right and 0.8 to the front.
    expect(by.get('outside base.left to face.right')).toBeCloseTo(-0.3 * 0.6, 7);
    expect(by.get('outside face.front to base.rear')).toBeCloseTo(-0.3 * 0.8, 7);
  });
});
