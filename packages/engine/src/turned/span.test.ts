import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cantTooLarge } from '../checks/cant-too-large.js';
import { turnedOtherwise } from '../checks/turned-otherwise.js';
import { Rational } from '../number/rational.js';
import { solveSpec } from '../sizes/solved.js';
import { foundBy, words } from '../testing/found.js';
import { connectNone, flush, flushWith, reference } from '../testing/joint-items.js';
import { cornerUnit } from './corner.fixture.js';
import { rootOf, spanOf } from './span.js';

describe('a root as a size', () => {
  it('is exact for every fraction that is a square', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 9n }), fc.bigInt({ min: 1n, max: 10n ** 9n }), (n, d) => {
        const side = Rational.of(n, d);
        const { rounded, width } = rootOf(side.mul(side));
        expect(rounded.equals(side)).toBe(true);
        expect(Math.abs(width.value - side.toNumber())).toBeLessThanOrEqual(width.error);
      }),
    );
  });

  it('is else within half a thousandth, and its bound holds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 ** 7 }), (n) => {
        const { rounded, width } = rootOf(Rational.of(n));
        expect(Math.abs(rounded.toNumber() - Math.sqrt(n))).toBeLessThanOrEqual(0.0005 + 1e-9);
        // Squared in whole numbers: the true root lies between value − error and value + error.
        expect((width.value - width.error) ** 2).toBeLessThanOrEqual(n);
        expect((width.value + width.error) ** 2).toBeGreaterThanOrEqual(n);
      }),
    );
  });
});

describe('cants that cannot be cut', () => {
  const found = (unit: Parameters<typeof cornerUnit>[0]) =>
    foundBy(cantTooLarge, cornerUnit(unit).build()).map(({ message }) => words(message));

  it('legs as long as the part, and legs of nothing', () => {
    expect(found({ cantWidth: '699.999' })).toEqual([]);
    expect(found({ cantWidth: 700 })[0]).toBe(
      'the cant takes 700 off the width of base, which is 700: nothing is left of its front edge up to the left',
    );
    expect(found({ cantDepth: 0 })[0]).toBe('the cant takes 0 off the depth of base: that cuts no corner off');
    expect(found({ cantDepth: -5 })).toHaveLength(2);
  });

  it('leaves the part on it without a place, and nothing breaks', () => {
    for (const cantWidth of [0, -5, 700, 1e6]) {
      const spec = cornerUnit({ cantWidth }).build();
      const span = spanOf(solveSpec(spec), 'base');
      expect(span === undefined).toBe(cantWidth <= 0);
    }
  });

  it('a second one, and one at a face', () => {
    const twice = cornerUnit().cant('base', ['rear', 'right'], { width: 50, depth: 50 }).build();
    expect(foundBy(cantTooLarge, twice).map(({ message }) => words(message))).toEqual([
      'base has a cant at front right already, and base.cant can mean one of them only',
    ]);
    const face = cornerUnit().cant('side', ['front', 'left'], { width: 5, depth: 50 }).build();
    expect(words(foundBy(cantTooLarge, face)[0]?.message ?? [])).toContain('is a face');
  });
});

describe('what is not worked out of turned parts', () => {
  const found = (spec: ReturnType<typeof cornerUnit>) =>
    foundBy(turnedOtherwise, spec.build()).map(({ message }) => words(message));
  const glued = connectNone('glued');

  it('nothing of the unit as it stands', () => expect(found(cornerUnit())).toEqual([]));

  it.each<[string, ReturnType<typeof cornerUnit>, string]>([
    ['a groove', cornerUnit().joint('groove', 'front', 'to base.top'), 'a groove of a turned part is not worked out'],
    [
      'a host that is turned',
      cornerUnit().part('shelf', 'level').joint('butt', 'shelf', 'to front.rear', glued),
      'shelf enters front',
    ],
    [
      'a square part at a cant',
      cornerUnit().part('rail', 'facing').joint('butt', 'rail', 'to base.cant', glued),
      'does not stand along base.cant',
    ],
    ['a width of its own', cornerUnit().of('width', 300, 'front'), 'front.left lies across neither width nor depth'],
    ['a place of its own', cornerUnit().place('front', flushWith('front', 'base')), 'front.front lies across neither'],
    [
      'its inner face as reference',
      cornerUnit().joint('butt', 'front', 'to base.top', reference('rear')),
      'lies in no plane of the parts it meets',
    ],
    [
      'a level part without the cant',
      cornerUnit().part('lid', 'level').joint('butt', 'front', 'to lid.bottom', glued),
      'lid has no cant that runs where that of base does',
    ],
    [
      'a mitre at a side that runs past',
      cornerUnit().joint('mitre', 'front', 'to back.rear', glued),
      'back.rear does not run through an end of base.cant',
    ],
    [
      'a mitre with no side named',
      cornerUnit().joint('mitre', 'front', 'between stub and end', glued),
      'no outer side of stub is named',
    ],
    ['a part on what is not level', cornerUnit().on('side', 'other'), 'side does not lie level'],
    ['a part on what has no cant', cornerUnit().part('shelf', 'level').on('shelf', 'other'), 'shelf has no cant'],
    ['an upright on a cant', cornerUnit().on('base', 'other', 'upright'), 'other is upright'],
    [
      'a notch in it',
      cornerUnit().notch('front', ['left', 'bottom'], { width: 20, height: 20 }),
      'a notch in a turned part',
    ],
  ])('%s', (_, spec, text) => {
    expect(found(spec).some((message) => message.includes(text))).toBe(true);
  });

  it('flush with the cant and its ends says what holds anyway', () => {
    expect(found(cornerUnit().joint('butt', 'front', 'to base.top', flush('front', 'left', 'right'), glued))).toEqual(
      [],
    );
    expect(found(cornerUnit().joint('butt', 'front', 'to base.top', flush('rear'), glued))).not.toEqual([]);
  });
});
