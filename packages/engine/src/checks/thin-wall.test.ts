import { describe, expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { at, connect, cut, fact, flush } from '../testing/joint-items.js';
import { lines, material, shop } from '../testing/shop-builder.js';
import { cabinet, sides } from '../testing/spec-builder.js';
import { thinWall } from './thin-wall.js';

const found = (spec: Parameters<typeof foundBy>[1]) => foundBy(thinWall, spec);

it('says so where no place in the thickness would do', () => {
  const [thin] = found(
    sides(shop({ materials: [material('thin', 12)] }))
      .part('shelf', 'level', 'thin')
      .joint(
        'butt',
        'shelf',
        'between lh and rh',
        fact(at('bottom', 100, 'above', 'lh.bottom')),
        flush('rear', 'front'),
        connect('biscuit20', lines(70, 490)),
      )
      .build(),
  );
  expect(thin && words(thin.message)).toContain('leave a wall of 0.4 to the top face of shelf');
  expect(thin && words(thin.cure)).toContain('No place in this thickness leaves 4 on both sides');
});

it('moves the part where the slots run too near to an end of its host', () => {
  const [near] = found(
    sides()
      .part('shelf', 'level')
      .joint(
        'butt',
        'shelf',
        'between lh and rh',
        fact(at('top', 5, 'above', 'lh.top')),
        flush('rear', 'front'),
        connect('biscuit20', lines(70, 490)),
      )
      .build(),
  );
  // 9.5 below a top that stands 5 above the sides: 4.5 − 2 − 0.1 is left.
  expect(near && words(near.message)).toContain('leave a wall of 2.4 to the top edge of lh and rh');
  expect(near && words(near.cure)).toBe('Move shelf 1.6 away from the top end of lh.');
});

describe('a groove in the edge of a frame', () => {
  const framed = (panel: string) =>
    cabinet(shop({ materials: [material('frame', 20), material('panel', panel)] }))
      .part('stileL, stileR', 'facing', 'frame')
      .part('panel', 'facing', 'panel')
      .over('width', 400, 'stileL', 'stileR')
      .of('width', 60, 'stileL, stileR')
      .of('height', 500, 'stileL, stileR')
      .joint(
        'groove',
        'panel',
        'between stileL.right and stileR.left',
        fact(at('front', 4, 'behind', 'stileL.front')),
        flush('bottom', 'top'),
        cut({ width: panel, depth: 8, clearance: 1 }),
      )
      .build();

  it('leaves a wall on both sides', () => {
    expect(found(framed('12'))).toEqual([]);
    const [thin] = found(framed('12.001'));
    expect(thin && words(thin.message)).toContain('to the rear face of stileL');
  });
});
