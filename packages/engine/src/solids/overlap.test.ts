import { describe, expect, it } from 'vitest';
import { partsOverlap } from '../checks/parts-overlap.js';
import { foundBy, words } from '../testing/found.js';
import { at, connectNone, cut, fact, flush, outer, setBack } from '../testing/joint-items.js';
import { material, shop } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';

const boards = shop({ materials: [material('board', 20)] });
const mitred = () =>
  sides(boards)
    .part('top', 'level', 'birch18')
    .joint('mitre', 'top', 'between lh and rh', outer('top'), flush('rear', 'front'), connectNone('glued'));

const block = (x: number, z: number) =>
  mitred()
    .part('block', 'upright', 'board')
    .of('height', 100, 'block')
    .of('depth', 50, 'block')
    .place('block', at('left', x, 'right of', 'lh.left'))
    .place('block', at('bottom', z, 'above', 'lh.bottom'))
    .place('block', at('front', 100, 'behind', 'lh.front'));

describe('parts beside a mitre', () => {
  it('are not in the way of each other for being mitred', () => {
    expect(foundBy(partsOverlap, mitred().build())).toEqual([]);
  });

  it('meet a part that stands across the slope, each with its own share', () => {
    // Sides and top are 17.7 thick, 720 high. A block 20 thick from 0.7 in, its top 5.7 below the outer corner's top: the
    // slope halves the corner, so that the side reaches up to it only where it is as far in as it is far down.
    const found = foundBy(partsOverlap, block(-2.3, 614.3).build());
    const about = found.map(({ about: { parts } }) => parts?.join(' and '));
    expect(about).toEqual(['block and lh', 'block and top']);
    const lh = found.find(({ about: { parts } }) => parts?.includes('lh'));
    // Across the whole of the block's thickness there: 17.7 of it, 50 deep, as high as the outer face: all 100.
    expect(words(lh?.message ?? [])).toContain('17.7 in width, 50 in depth and 100 in height');
    const top = found.find(({ about: { parts } }) => parts?.includes('top'));
    // The top begins at the slope: at 714.3 it is 5.7 in from the outer corner, and its inner face lies at 702.3.
    expect(words(top?.message ?? [])).toContain('12 in width, 50 in depth and 12 in height');
  });
});

describe('a shelf in a stopped housing', () => {
  const housed = (front: number) =>
    sides()
      .part('shelf', 'level')
      .joint(
        'house',
        'shelf',
        'between lh and rh',
        fact(at('bottom', 300, 'above', 'lh.bottom')),
        fact(setBack('front', front, 'lh')),
        fact(setBack('rear', 20, 'lh')),
        cut({ depth: 6, stopped: 12 }),
      );

  it('goes in where it is as narrow as the housing is long', () => {
    expect(foundBy(partsOverlap, housed(12).build())).toEqual([]);
  });

  it('is in the way of the side by what it is wider, as deep as the housing', () => {
    const found = foundBy(partsOverlap, housed(10).build());
    expect(found.map(({ message }) => words(message))).toEqual([
      'lh and shelf take up the same room: they overlap by 6 in width, 2 in depth and 17.7 in height',
      'rh and shelf take up the same room: they overlap by 6 in width, 2 in depth and 17.7 in height',
    ]);
    expect(found[0]?.marks?.map(({ part }) => part)).toEqual(['lh', 'shelf']);
  });
});
