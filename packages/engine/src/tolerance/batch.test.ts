import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Rational } from '../number/rational.js';
import { against, at, cut, fact, flush, reference, setBack } from '../testing/joint-items.js';
import { material, shop } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { ifCutAsPlanned } from './as-planned.js';
import { fromBatch, ifMeasured } from './measured.js';

const periodicals = (topReference?: 'top' | 'bottom') =>
  sides()
    .part('top, base, shelf', 'level')
    .part('back', 'facing', 'ply6')
    .connect('biscuit20', 'deep5')
    .joint(
      'butt',
      'top',
      'between lh and rh',
      flush('top', 'rear', 'front'),
      ...(topReference ? [reference(topReference)] : []),
    )
    .joint('butt', 'base', 'between lh and rh', flush('bottom', 'rear', 'front'))
    .joint(
      'groove',
      'back',
      'between lh and rh, base and top',
      fact(setBack('rear', 16, 'lh')),
      cut({ width: 6, depth: 8, clearance: '0.5' }),
    )
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      fact(at('bottom', 350, 'above', 'base.bottom')),
      fact(against('rear', 'back.groove.front')),
      flush('front'),
    )
    .build();

const hundredths = fc.integer({ min: 1700, max: 1830 }).map((n) => Rational.of(n, 100));
const MEASURED = Rational.of(177, 10);

describe('another batch', () => {
  test('changes what stands between the sides by twice what it is off, and nothing at the bench', () => {
    fc.assert(
      fc.property(hundredths, (value) => {
        const off = MEASURED.sub(value).mul(Rational.TWO).toString();
        const other = ifMeasured(periodicals(), new Map([['birch18', value]]));
        const told = other.recut.map(({ part, size, change }) => `${part} ${size} ${change.to.sub(change.from)}`);
        const expected = value.equals(MEASURED)
          ? []
          : [
              `top length ${off}`,
              `base length ${off}`,
              `shelf length ${off}`,
              `back length ${off}`,
              `back width ${off}`,
            ];
        expect([...told].sort()).toEqual([...expected].sort());
        expect(other.reset).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  test('that is cut and milled as planned makes the case narrower, and no step where both halves are measured from', () => {
    fc.assert(
      fc.property(hundredths, (value) => {
        const by = value.sub(MEASURED);
        const moved = ifCutAsPlanned(periodicals(), new Map([['birch18', value]]));
        const widths = moved.filter(({ result }) => result.about.kind === 'outside');
        expect(widths.map((one) => one.by.toString())).toEqual(by.isZero() ? [] : [by.mul(Rational.TWO).toString()]);
        expect(moved.filter(({ result }) => result.about.kind === 'step')).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  test('comes whole into the step at a face that the slots are not measured from', () => {
    fc.assert(
      fc.property(hundredths, (value) => {
        const by = value.sub(MEASURED);
        const moved = ifCutAsPlanned(periodicals('bottom'), new Map([['birch18', value]]));
        const steps = moved.filter(({ result }) => result.about.kind === 'step');
        const expected = by.isZero() ? [] : ['top / lh', 'top / rh'].map((id) => `${id} step top ${by}`);
        expect(steps.map((one) => `${one.result.id} ${one.by}`)).toEqual(expected);
      }),
      { numRuns: 20 },
    );
  });

  test('re-sets the stop that stands as far from the end as the sheet is thick', () => {
    const other = ifMeasured(periodicals('bottom'), new Map([['birch18', Rational.of(87, 5)]]));
    expect(other.reset.map(({ part, what, change }) => `${part} ${what} ${change.from} ${change.to}`)).toEqual([
      'lh stop 7023/10 3513/5',
      'rh stop 7023/10 3513/5',
    ]);
  });

  test('makes sheets that are glued up of it as thick as their layers', () => {
    const thick = material('thick', 36, { measured: '35.4 ± 0.4', layers: ['birch18', 'birch18'] });
    const spec = sides(shop({ materials: [thick] }))
      .part('bench', 'level', 'thick')
      .build();
    const { shop: other } = fromBatch(spec, new Map([['birch18', Rational.of(17)]]));
    expect(other.materials.get('thick')?.measured?.value.toString()).toBe('34');
  });

  test('takes the place of the nominal thickness where sizes are worked from that', () => {
    const spec = { ...periodicals(), thickness: 'nominal' as const };
    const other = ifMeasured(spec, new Map([['birch18', Rational.of(19)]]));
    expect(other.recut.map(({ part, size, change }) => `${part} ${size} ${change.from} ${change.to}`)).toContain(
      'top length 564 562',
    );
    // The back is worked from its nominal thickness before and after.
    expect(other.thicker.map(({ part }) => part)).not.toContain('back');
  });

  test('of a material that no part is of changes nothing', () => {
    const other = ifMeasured(periodicals(), new Map([['oak', Rational.of(20)]]));
    expect([other.recut, other.reset, other.cuts, other.thicker]).toEqual([[], [], [], []]);
    expect(ifCutAsPlanned(periodicals(), new Map([['oak', Rational.of(20)]]))).toEqual([]);
  });
});
