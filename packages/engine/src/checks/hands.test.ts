import { describe, expect, it } from 'vitest';
import { foundBy } from '../testing/found.js';
import { at, cut, fact, flush, setBack } from '../testing/joint-items.js';
import { lines } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { handed } from './handed.js';

/** Sides 560 deep with a shelf off the middle of their height, on lines that lie so far from the rear. */
const shelved = (...at3: (string | number)[]) =>
  sides()
    .part('shelf', 'level')
    .connect('biscuit20', lines(...at3))
    .joint('butt', 'shelf', 'between lh and rh', flush('rear', 'front'), fact(at('bottom', 200, 'above', 'lh.bottom')));

describe('left and right sides', () => {
  it('are one piece where the lines lie alike from both edges', () => {
    expect(foundBy(handed, shelved(100, 280, 460).build())).toEqual([]);
  });

  it('are told where a line is off by more than a step and less than the play', () => {
    // Turned round, a line at 278 lies at 282; a #20 has 9.687 of play in a slot of 65.687.
    expect(foundBy(handed, shelved(100, 278, 460).build()).map(({ about }) => about.parts)).toEqual([['lh', 'rh']]);
    expect(foundBy(handed, shelved(100, '279.9', 460).build())).toEqual([]);
    expect(foundBy(handed, shelved(100, 270, 460).build())).toEqual([]);
  });

  it('are not told where a groove shows which way round they go', () => {
    const grooved = shelved(100, 278, 460)
      .part('back', 'facing', 'ply6')
      .of('height', 600, 'back')
      .joint(
        'groove',
        'back',
        'between lh and rh',
        fact(setBack('rear', 10, 'lh')),
        cut({ width: 6, depth: 8 }),
        flush('top'),
      )
      .build();
    expect(foundBy(handed, grooved)).toEqual([]);
  });

  it('are one piece where turning them upside down makes the one the other', () => {
    // The shelves lie alike from top and bottom, so that a left side stood on its head is a right side.
    const two = sides()
      .part('upper, lower', 'level')
      .connect('biscuit20', lines(100, 278, 470))
      .joint('butt', 'upper', 'between lh and rh', flush('rear', 'front'), fact(at('top', 100, 'below', 'lh.top')))
      .joint(
        'butt',
        'lower',
        'between lh and rh',
        flush('rear', 'front'),
        fact(at('bottom', 100, 'above', 'lh.bottom')),
      )
      .build();
    expect(foundBy(handed, two)).toEqual([]);
  });
});
