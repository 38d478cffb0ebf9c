import { describe, expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { at, connect, connectNone, cut, fact, flush, flushWith, type Item } from '../testing/joint-items.js';
import { connector, lines, machine, shop } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { jointCanRotate } from './joint-can-rotate.js';

const stock = shop({
  machines: [machine('drill', 'drill', { diameter: 8, base: 4, to: 20 })],
  connectors: [
    connector('dowel', 'dowel', { along: 8, across: 35, thickness: 8, face: 12, edge: 25, machine: 'drill' }),
  ],
});
const told = (spec: Parameters<typeof foundBy>[1]) =>
  foundBy(jointCanRotate, spec).map(({ message }) => words(message));

const pinned = (...items: readonly Item[]) =>
  sides(stock)
    .part('shelf', 'level')
    .part('back', 'facing')
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      fact(at('bottom', 100, 'above', 'lh.bottom')),
      flush('rear', 'front'),
      connect('dowel', lines(280)),
    )
    .joint(
      'butt',
      'back',
      'to shelf.top',
      fact(at('left', 0, 'right of', 'lh.right')),
      fact(at('right', 0, 'left of', 'rh.left')),
      fact(flushWith('rear', 'shelf')),
      ...items,
    );

describe('a shelf on one dowel at each end', () => {
  it('turns about the line through both', () => {
    const spec = sides(stock)
      .part('shelf', 'level')
      .joint(
        'butt',
        'shelf',
        'between lh and rh',
        fact(at('bottom', 100, 'above', 'lh.bottom')),
        flush('rear', 'front'),
        connect('dowel', lines(280)),
      )
      .build();
    expect(told(spec)).toEqual([
      'only one dowel holds shelf to each of lh and rh, along 560: shelf turns about it until the glue is dry',
    ]);
  });

  // The sides hang on the shelf alone, so a back on the shelf holds the shelf and not the sides.
  it.each([
    ['dowels in a back', [connect('dowel', lines(60, 300))]],
    ['a back that is screwed on', [connectNone('screwed')]],
  ])('with %s it is the sides that turn', (_, items) => {
    expect(told(pinned(...items).build())[0]).toContain(': lh turns about it');
  });

  it('is held once the sides are held to something else as well', () => {
    const spec = pinned(connectNone('screwed'))
      .joint('groove', 'back', 'between lh and rh', cut({ width: 18, depth: 5, clearance: '0.5' }))
      .build();
    expect(told(spec)).toEqual([]);
  });
});

it('is not said of a row that lost its slots to a contact too short for its layout', () => {
  const short = sides(stock)
    .part('rail', 'level')
    .of('depth', 30, 'rail')
    .joint(
      'butt',
      'rail',
      'between lh and rh',
      flush('top', 'rear'),
      connect('dowel', {
        kind: 'spread',
        first: stock.limits.slotToEdge,
        last: stock.limits.slotToEdge.mul(stock.limits.skin),
      }),
    )
    .build();
  expect(told(short)).toEqual([]);
});
