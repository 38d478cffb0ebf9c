import { type Sag, sagOf } from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shopText } from '../support/fixture-shop.js';
import { codesOf } from '../support/look.js';
import { fitText } from '../support/read.js';

interface Wishes {
  readonly units?: 'mm' | 'in';
  readonly thickness: string;
  readonly material: string;
  readonly span: string;
  readonly deep: string;
  readonly load: string;
  readonly limits?: string;
}

/** One shelf between two sides of the same board, so that its clear span is as asked. */
function shelf({ units = 'mm', thickness, material, span, deep, load, limits = '' }: Wishes): string {
  const one = units === 'mm' ? '' : '"';
  return `units ${units}
${shopText({ pattern: `lines 80mm, 150mm`, more: '' }).replace(/^limits.*$/m, `limits { slot to edge along the run 5mm  wall beside slot 0mm  skin under slot 0mm ${limits} }`)}
material wood { thickness ${thickness} ${material} }
cabinet Case {
  part lh, rh : upright of wood
  part shelf : level of wood
  width ${span} between lh and rh
  height ${units === 'mm' ? '600' : '24'}${one} of lh, rh
  depth ${deep} of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  load ${load}
  butt shelf between lh and rh { bottom 200mm above lh.bottom  flush front, rear  connect none "loads only" }
}
`;
}

async function sagIn(text: string): Promise<Sag> {
  const { spec, fit } = await fitText(text);
  const sag = sagOf(spec, fit, 'shelf');
  if (sag?.kind !== 'sag') throw new Error(`not reckoned: ${sag?.why}`);
  return sag;
}

const PSI_IN_GPA = 6.894757293168e-6;
const gpa = (psi: number) => (psi * PSI_IN_GPA).toFixed(9);

// Architectural Woodwork Standards, edition 1 (2009), section 10, page 279: the longest spans of closet and library
// shelving at 40 and 50 lb/ft², span/144, inches. The table is in whole inches, mostly rounded down.
describe('published spans', () => {
  test.each([
    [950_000, '3/4', 40, 40],
    [950_000, '3/4', 50, 37],
    [950_000, '1', 40, 53],
    [950_000, '1', 50, 49],
    [1_800_000, '3/4', 40, 49],
    [1_800_000, '3/4', 50, 46],
    [1_800_000, '1', 40, 66],
    [1_800_000, '1', 50, 61],
    [1_820_000, '3/4', 40, 49],
    [1_820_000, '3/4', 50, 46],
    [1_820_000, '1', 40, 66],
    [1_820_000, '1', 50, 61],
  ])('E %d psi, %s in, %d lb/ft²: %d in', async (psi, thickness, load, published) => {
    const wishes = {
      units: 'in',
      thickness,
      material: `stiffness ${gpa(psi)} GPa`,
      deep: '12',
      load: `${load} lb/ft2 on shelf`,
    } as const;
    const { longest } = await sagIn(shelf({ ...wishes, span: '30' }));
    expect(Math.abs((longest?.value ?? 0) / 25.4 - published)).toBeLessThan(0.8);
    // A hair under the longest span passes and a hair over it does not.
    const inches = (longest?.value ?? 0) / 25.4;
    expect(codesOf((await fitText(shelf({ ...wishes, span: (inches - 0.001).toFixed(4) }))).findings)).not.toContain(
      'shelf-sags',
    );
    expect(codesOf((await fitText(shelf({ ...wishes, span: (inches + 0.001).toFixed(4) }))).findings)).toContain(
      'shelf-sags',
    );
  });
});

// The usual formulae for 900 × 300 × 18 under 25 kg, worked apart from this code; stiffness of particle board P2 and MDF
// after EN 312 and EN 622-5 (makers' data), plywood and oak after the Wood Handbook, creep after EN 1995-1-1 (service
// class 1). Densities are example figures.
describe('a metric shelf', () => {
  test.each([
    ['particle board', '1.6', 650, 2.25, 9.9758, 11.2364, 36.518],
    ['MDF', '2.2', 750, 2.25, 7.2552, 8.313, 27.017],
    ['plywood', '6.96', 550, 0.8, 2.2933, 2.5385, 4.569],
    ['red oak', '12.5485', 700, 0.6, 1.272, 1.4451, 2.312],
  ])('of %s', async (_, stiffness, density, creep, load, total, inTime) => {
    const material = (more: string) => `stiffness ${stiffness} GPa  creep ${creep} ${more}`;
    const wishes = { thickness: '18', span: '900', deep: '300', load: '25 kg on shelf' };
    const light = await sagIn(shelf({ ...wishes, material: material('') }));
    expect(light.first.toNumber()).toBeCloseTo(load, 3);
    const heavy = await sagIn(shelf({ ...wishes, material: material(`density ${density} kg/m3`) }));
    expect(heavy.first.toNumber()).toBeCloseTo(total, 3);
    expect(heavy.inTime?.toNumber()).toBeCloseTo(inTime, 2);
    const fixed = await sagIn(
      shelf({ ...wishes, material: material(`density ${density} kg/m3`), load: '25 kg on shelf with fixed ends' }),
    );
    expect(fixed.first.toNumber()).toBeCloseTo(total / 5, 3);
  });

  test('the same load at the middle sags 1.6 times as much', async () => {
    const wishes = { thickness: '18', material: 'stiffness 1.6 GPa', span: '900', deep: '300' };
    const middle = await sagIn(shelf({ ...wishes, load: '25 kg at the middle of shelf' }));
    expect(middle.first.toNumber()).toBeCloseTo(15.9613, 3);
  });
});

/**
 * Sag at the middle by numbers alone: bending moments from the loads, curvature M/(E·I) summed up twice along the span,
 * with the end moment of held ends found so that the ends do not turn.
 */
function summedUp(span: number, ei: number, w: number, p: number, fixed: boolean): number {
  const steps = 20_000;
  const dx = span / steps;
  const moment = (x: number) => (w * x * (span - x)) / 2 + (p * Math.min(x, span - x)) / 2;
  let area = 0;
  for (let i = 0; i < steps; i++) area += moment((i + 0.5) * dx) * dx;
  const held = fixed ? area / span : 0;
  const curvature = (x: number) => (moment(x) - held) / ei;
  let half = 0;
  for (let i = 0; i < steps / 2; i++) half += curvature((i + 0.5) * dx) * dx;
  // By symmetry the beam is level at its middle; from there to an end it turns and drops.
  let [slope, drop] = [half, 0];
  for (let i = 0; i < steps / 2; i++) {
    const turn = curvature((i + 0.5) * dx) * dx;
    drop += (slope - turn / 2) * dx;
    slope -= turn;
  }
  return drop;
}

test('any shelf sags as far as summing up its bending says', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.record({
        span: fc.integer({ min: 200, max: 2000 }),
        deep: fc.integer({ min: 150, max: 700 }),
        thickness: fc.integer({ min: 10, max: 40 }),
        stiffness: fc.integer({ min: 15, max: 140 }),
        spread: fc.integer({ min: 1, max: 80 }),
        middle: fc.integer({ min: 1, max: 40 }),
        unit: fc.constantFrom('kg', 'kg/m', 'kg/m2'),
        fixed: fc.boolean(),
      }),
      async ({ span, deep, thickness, stiffness, spread, middle, unit, fixed }) => {
        const ends = fixed ? ' with fixed ends' : '';
        const sag = await sagIn(
          shelf({
            thickness: String(thickness),
            material: `stiffness ${stiffness / 10} GPa`,
            span: String(span),
            deep: String(deep),
            load: `${spread} ${unit} on shelf${ends}\n  load ${middle} kg at the middle of shelf${ends}`,
          }),
        );
        const w = { kg: spread / span, 'kg/m': spread / 1000, 'kg/m2': (spread * deep) / 1e6 }[unit] ?? 0;
        const ei = (stiffness / 10) * 1000 * ((deep * thickness ** 3) / 12);
        const expected = summedUp(span, ei, w * 9.80665, middle * 9.80665, fixed);
        expect(Math.abs(sag.first.toNumber() / expected - 1)).toBeLessThan(1e-4);
      },
    ),
    { numRuns: 40 },
  );
});

test('limits written by the shop: at most, and in time', async () => {
  const wishes = {
    thickness: '18',
    material: 'stiffness 6.96 GPa  density 550 kg/m3  creep 0.8',
    span: '900',
    deep: '300',
    load: '25 kg on shelf',
  };
  const found = async (limits: string) => codesOf((await fitText(shelf({ ...wishes, limits }))).findings);
  expect(await found('sag 1/354 of span')).not.toContain('shelf-sags');
  expect(await found('sag 1/355 of span')).toContain('shelf-sags');
  expect(await found('sag at most 2.6')).not.toContain('shelf-sags');
  expect(await found('sag at most 2.5')).toContain('shelf-sags');
  expect(await found('sag in time 1/196 of span')).not.toContain('shelf-sags');
  expect(await found('sag in time 1/198 of span')).toContain('shelf-sags');
});
