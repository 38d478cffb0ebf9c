import { describe, expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { at, connect, cut, fact, flush, flushWith, setBack } from '../testing/joint-items.js';
import { lines } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { grooveShows } from './groove-shows.js';

const told = (spec: Parameters<typeof foundBy>[1]) => foundBy(grooveShows, spec).map(({ message }) => words(message));

describe('a shelf let in', () => {
  const shelf = (verb: 'house' | 'groove', setback: number, clearance: string) =>
    sides()
      .part('shelf', 'level')
      .joint(
        verb,
        'shelf',
        'between lh and rh',
        fact(at('bottom', 100, 'above', 'lh.bottom')),
        flush('rear'),
        fact(setBack('front', setback, 'lh')),
        cut({ depth: 5, clearance }),
      )
      .build();

  it('fills its housing where it comes flush, but not its groove', () => {
    expect(told(shelf('house', 0, '0'))).toEqual([]);
    expect(told(shelf('groove', 0, '0.5'))).toEqual([
      'the groove for shelf runs out of the front of lh and rh, where no part covers it and it shows',
      'the groove for shelf runs out of the rear of lh and rh, where no part covers it and it shows',
    ]);
  });

  it('leaves the mouth of a housing open that is longer by its clearance', () => {
    expect(told(shelf('house', 1, '1'))[0]).toContain('the housing for shelf runs out of the front');
    expect(told(shelf('house', 2, '1'))).toEqual([]);
  });
});

it('a part that lies against the whole mouth covers it, and one that leaves a strip open does not', () => {
  const covered = (height: number) =>
    sides()
      .part('bottom', 'level', 'ply6')
      .part('face', 'facing')
      .of('height', height, 'face')
      .joint(
        'groove',
        'bottom',
        'between lh and rh',
        fact(setBack('bottom', 12, 'lh')),
        flush('rear', 'front'),
        cut({ width: 6, depth: 8, clearance: '0.5' }),
      )
      .joint('butt', 'face', 'to lh.front, rh.front', flush('bottom'), connect('biscuit20', lines(70)))
      .place('face', flushWith('left', 'lh'))
      .place('face', flushWith('right', 'rh'))
      .build();
  // The groove stands from 12 to 18 above the underside.
  expect(told(covered(18)).filter((message) => message.includes('front of lh'))).toEqual([]);
  expect(told(covered(17)).filter((message) => message.includes('front of lh'))).toHaveLength(1);
});
