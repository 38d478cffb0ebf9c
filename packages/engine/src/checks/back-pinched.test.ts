import { expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { at, cut, fact, flush, setBack } from '../testing/joint-items.js';
import { material, shop } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { backPinched } from './back-pinched.js';

const told = (spec: Parameters<typeof foundBy>[1]) => foundBy(backPinched, spec).map(({ message }) => words(message));

it('a groove without a width is 0.2 wider than the sheet measures', () => {
  const grooved = (measured: string) =>
    sides(shop({ materials: [material('ply', 6, { measured })] }))
      .part('back', 'facing', 'ply')
      .joint(
        'groove',
        'back',
        'between lh and rh',
        fact(setBack('rear', 16, 'lh')),
        flush('bottom', 'top'),
        cut({ depth: 8, clearance: '0.5' }),
      )
      .build();
  expect(told(grooved('5.8 ± 0.2'))).toEqual([]);
  expect(told(grooved('5.8 ± 0.201'))[0]).toContain('is 6 wide, but ply may be 6 thick');
});

it('a second groove for the same panel is judged by the width that the first one gives', () => {
  const twice = sides()
    .part('base', 'level')
    .part('back', 'facing', 'ply6')
    .joint('butt', 'base', 'between lh and rh', flush('bottom', 'rear', 'front'))
    .joint(
      'groove',
      'back',
      'between lh and rh',
      fact(setBack('rear', 16, 'lh')),
      flush('top'),
      cut({ width: '5.85', depth: 8, clearance: '0.5' }),
    )
    .joint('groove', 'back', 'to base.top', cut({ depth: 8, clearance: '0.5' }))
    .build();
  expect(told(twice)).toHaveLength(1);
});

it('a housing is cut to the piece unless its width is written', () => {
  const housed = (width?: string) =>
    sides()
      .part('shelf', 'level')
      .joint(
        'house',
        'shelf',
        'between lh and rh',
        fact(at('bottom', 100, 'above', 'lh.bottom')),
        flush('rear', 'front'),
        cut(width === undefined ? { depth: 5 } : { depth: 5, width }),
      )
      .build();
  expect(told(housed())).toEqual([]);
  expect(told(housed('17.9'))).toEqual([]);
  expect(told(housed('17.8'))[0]).toContain('the housing for shelf is 17.8 wide, but birch18 may be 17.9 thick');
});
