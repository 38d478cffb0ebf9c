import { describe, expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { fact, flush, type Item, setBack } from '../testing/joint-items.js';
import { jig, lines, material, shop } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { shelfNeedsSpacer } from './shelf-needs-spacer.js';
import { spacerAbsurd } from './spacer-absurd.js';
import { spacerAlias } from './spacer-alias.js';
import { spacerNotInStock } from './spacer-not-in-stock.js';

const all = [shelfNeedsSpacer, spacerAbsurd, spacerAlias, spacerNotInStock];

/** A shelf flush in front and short by so much at the rear. */
const short = (by: string, house = shop(), ...more: Item[]) =>
  sides(house)
    .part('shelf', 'level')
    .connect('biscuit20', lines(180, 270, 420))
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      flush('front'),
      fact(setBack('rear', by, 'lh')),
      fact((places) => ({
        kind: 'at',
        side: 'bottom',
        by: [places.length(100)],
        toward: 'above',
        plane: places.plane('lh.bottom'),
        source: places.source(),
      })),
      ...more,
    )
    .build();

describe('a setback', () => {
  it('is nothing to a shop without a jig, and to one whose jig has no fences', () => {
    for (const house of [shop({ jig: null }), shop({ jig: jig({ fences: [] }) })]) {
      for (const check of all) expect(foundBy(check, short('137', house))).toEqual([]);
    }
  });

  it('is told by one check only, the most particular', () => {
    const told = (by: string, house = shop()) =>
      all.flatMap((check) => foundBy(check, short(by, house)).map(() => check.code));
    expect(told('0')).toEqual([]);
    expect(told('22')).toEqual([]);
    expect(told('15')).toEqual(['spacer-not-in-stock']);
    expect(told('15', shop({ jig: jig({ spacers: [] }) }))).toEqual(['shelf-needs-spacer']);
    expect(told('137')).toEqual(['spacer-absurd']);
    expect(told('137', shop({ jig: jig({ spacers: [] }) }))).toEqual(['spacer-absurd']);
  });
});

describe('a setback that strays with a sheet', () => {
  const lipped = (tolerance: string) => {
    const house = shop({
      materials: [material('lip', 16, { measured: tolerance })],
      jig: jig({ spacers: [16, 10], within: '0.2' }),
    });
    return sides(house)
      .part('shelf', 'level')
      .part('lipping', 'facing', 'lip')
      .connect('biscuit20', lines(180, 270, 420))
      .place('lipping', (places) => ({
        kind: 'flush with',
        side: 'rear',
        plane: places.plane('lh', 'rear'),
        source: places.source(),
      }))
      .joint(
        'butt',
        'shelf',
        'between lh and rh',
        flush('front'),
        fact((places) => ({
          kind: 'against',
          side: 'rear',
          plane: places.plane('lipping.front'),
          source: places.source(),
        })),
        fact((places) => ({
          kind: 'at',
          side: 'bottom',
          by: [places.length(100)],
          toward: 'above',
          plane: places.plane('lh.bottom'),
          source: places.source(),
        })),
      )
      .build();
  };

  it('is served by a stack within the tolerance of the thinnest and the thickest sheet', () => {
    expect(foundBy(spacerNotInStock, lipped('16 ± 0.2'))).toEqual([]);
    expect(foundBy(spacerNotInStock, lipped('16 ± 0.201'))).toHaveLength(1);
    expect(foundBy(spacerNotInStock, lipped('15.9 plus 0.3 minus 0.1'))).toEqual([]);
    expect(foundBy(spacerNotInStock, lipped('15.9 plus 0.3 minus 0.101'))).toHaveLength(1);
  });

  it('offers no number where no number would do for every sheet', () => {
    const [found] = foundBy(spacerNotInStock, lipped('16 ± 0.3'));
    expect(found && words(found.cure)).toMatch(/^Write "spacer cut"/);
    expect(found?.data).not.toHaveProperty('to');
  });
});
