import { describe, expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { across, at, connect, cut, fact, flush, flushWith, outer, setBack } from '../testing/joint-items.js';
import { lines } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { partsOverlap } from './parts-overlap.js';

const told = (spec: Parameters<typeof foundBy>[1]) => foundBy(partsOverlap, spec).map(({ message }) => words(message));

describe('overlaps on purpose', () => {
  it.each(['6', '5'])('a panel in its groove, even where the groove is too narrow: %s', (width) => {
    const grooved = sides()
      .part('back', 'facing', 'ply6')
      .joint(
        'groove',
        'back',
        'between lh and rh',
        fact(setBack('rear', 16, 'lh')),
        flush('bottom', 'top'),
        cut({ width, depth: 8, clearance: '0.5' }),
      )
      .build();
    expect(told(grooved)).toEqual([]);
  });

  it('a shelf in its housing', () => {
    const housed = sides()
      .part('shelf', 'level')
      .joint(
        'house',
        'shelf',
        'between lh and rh',
        fact(at('bottom', 100, 'above', 'lh.bottom')),
        flush('rear', 'front'),
        cut({ depth: 5 }),
      )
      .build();
    expect(told(housed)).toEqual([]);
  });

  it('mitred parts', () => {
    const mitred = sides()
      .part('top', 'level')
      .joint(
        'mitre',
        'top',
        'between lh and rh',
        outer('top'),
        flush('rear', 'front'),
        across('18.6'),
        connect('biscuit20', lines(70, 490)),
      )
      .build();
    expect(told(mitred)).toEqual([]);
  });

  it('a kick in the notch of the sides, as far as the notch makes room', () => {
    const kicked = (height: number) =>
      sides()
        .part('kick', 'facing')
        .of('height', height, 'kick')
        .notch('lh, rh', ['front', 'bottom'], { depth: 60, height: 100 })
        .place('kick', flushWith('left', 'lh'))
        .place('kick', flushWith('right', 'rh'))
        .place('kick', flushWith('bottom', 'lh'))
        .place('kick', flushWith('front', 'lh'))
        .build();
    expect(told(kicked(100))).toEqual([]);
    expect(told(kicked(105))).toEqual([
      'kick and lh take up the same room: they overlap by 17.7 in width, 17.7 in depth and 5 in height',
      'kick and rh take up the same room: they overlap by 17.7 in width, 17.7 in depth and 5 in height',
    ]);
  });
});
