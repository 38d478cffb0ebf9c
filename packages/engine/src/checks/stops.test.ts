import { describe, expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { at, fact, flush, reference } from '../testing/joint-items.js';
import { jig, lines, shop } from '../testing/shop-builder.js';
import { cabinet, sides } from '../testing/spec-builder.js';
import { mm } from '../testing/written.js';
import { endsDiffer } from './ends-differ.js';
import { stopNotOnStep } from './stop-not-on-step.js';
import { stopOutOfRange } from './stop-out-of-range.js';

const withStop = (most: number, step: string) =>
  shop({ jig: jig({ stop: { least: mm(0), most: mm(most), step: mm(step) } }) });

const shelfAt = (height: string, house = shop()) =>
  sides(house)
    .part('shelf', 'level')
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      flush('rear', 'front'),
      fact(at('bottom', height, 'above', 'lh.bottom')),
    )
    .connect('biscuit20', lines(70, 160, 250))
    .build();

/** A shelf between a side on the floor and one that stands `lower` higher. */
const uneven = (height: string, lower: string, house = shop()) =>
  cabinet(house)
    .part('lh, rh', 'upright')
    .part('shelf', 'level')
    .over('width', 600, 'lh', 'rh')
    .of('height', 700, 'lh')
    .of('depth', 320, 'lh, rh')
    .place('rh', at('bottom', lower, 'above', 'lh.bottom'))
    .place('rh', at('top', 0, 'above', 'lh.top'))
    .place('rh', at('rear', 0, 'behind', 'lh.rear'))
    .connect('biscuit20', lines(70, 160, 250))
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      flush('rear', 'front'),
      fact(at('bottom', height, 'above', 'lh.bottom')),
    )
    .build();

describe('a stop outside the range of the jig', () => {
  it('is let pass at the very end of a part, where none is needed', () => {
    expect(foundBy(stopOutOfRange, shelfAt('0'))).toEqual([]);
  });

  it('is told where the reference lies beyond the end', () => {
    const [found] = foundBy(stopOutOfRange, shelfAt('-5'));
    expect(found && words(found.message)).toContain('5 beyond the bottom of lh and rh');
  });

  it('is told with the other end where that is within reach, and else without', () => {
    const cures = (most: number) =>
      foundBy(stopOutOfRange, shelfAt('400', withStop(most, '1'))).map(({ cure }) => words(cure));
    expect(cures(350)).toEqual([expect.stringContaining('reference top')]);
    expect(cures(200)).toEqual([expect.not.stringContaining('reference top')]);
  });

  it('is told without the other end where other parts of the statement are out of reach from there', () => {
    const racked = (heights: readonly [number, number]) =>
      sides(withStop(400, '1'))
        .likeParts('shelf', 2, 'level')
        .joint(
          'butt',
          'shelf',
          'between lh and rh',
          flush('rear', 'front'),
          fact(at('bottom', heights, 'above', 'lh.bottom')),
        )
        .connect('biscuit20', lines(70, 160, 250))
        .build();
    const cures = (low: number, high: number) =>
      foundBy(stopOutOfRange, racked([low, high])).map(({ cure }) => words(cure));
    expect(cures(350, 500)).toEqual([expect.stringContaining('reference top')]);
    expect(cures(200, 500)).toEqual([expect.stringMatching(/^Mark the slots out by hand/)]);
  });

  it('is told once for a part whose two ends need different stops', () => {
    expect(foundBy(stopOutOfRange, uneven('500', '17.7', withStop(400, '0.5')))).toHaveLength(1);
  });
});

describe('a stop off the places of the jig', () => {
  const coarse = withStop(760, '2');

  it('is not told where it is the block for an uneven end that makes it up', () => {
    const spec = uneven('120', '17.7', coarse);
    expect(foundBy(stopNotOnStep, spec)).toEqual([]);
    expect(foundBy(endsDiffer, spec)).toHaveLength(1);
  });

  it('is told where the longer stop is off as well', () => {
    expect(foundBy(stopNotOnStep, uneven('121', '17.7', coarse))).not.toEqual([]);
  });

  it('is told once for both sides', () => {
    const found = foundBy(stopNotOnStep, shelfAt('121', coarse));
    expect(found.map(({ about }) => about.parts)).toEqual([['lh', 'rh']]);
  });
});

describe('without a stop on the jig', () => {
  const none = shop({ jig: jig({ stop: undefined }) });

  it('nothing is said of stops', () => {
    const spec = uneven('121.3', '17.7', none);
    for (const check of [stopOutOfRange, stopNotOnStep, endsDiffer]) expect(foundBy(check, spec)).toEqual([]);
  });
});

it('a reference at the other face has its stop at the other end', () => {
  const spec = sides()
    .part('shelf', 'level')
    .connect('biscuit20', lines(70, 160, 250))
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      flush('rear', 'front'),
      reference('top'),
      fact(at('bottom', '-5', 'above', 'lh.bottom')),
    )
    .build();
  expect(foundBy(stopOutOfRange, spec)).toEqual([]);
});
