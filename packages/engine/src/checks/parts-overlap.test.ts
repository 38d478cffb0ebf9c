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

describe('the way out', () => {
  const AXES = ['x', 'y', 'z'] as const;
  const WAYS: Readonly<Record<string, (typeof AXES)[number]>> = {
    'left or right': 'x',
    'to front or rear': 'y',
    'up or down': 'z',
  };
  /** The test shop's sheet of 18, as measured. */
  const SHEET = 17.7;

  /** Two loose parts, the second of them through the first, past its end or within it. */
  it.each([
    ['a divider through a long kick', [600, 90], [300, -20, -5], [350, 400]],
    ['one past an end', [600, 90], [590, 4, 80], [40, 300]],
    ['one within the other', [600, 100], [250, 3, 20], [9, 30]],
    ['a crossing', [600, 40], [300, 1, -200], [5, 400]],
  ] as const)('clears them, and a shorter one does not: %s', (_, [w, h], [x, y, z], [deep, high]) => {
    const spec = sides()
      .part('kick', 'facing')
      .part('stud', 'upright')
      .of('width', w, 'kick')
      .of('height', h, 'kick')
      .of('depth', deep, 'stud')
      .of('height', high, 'stud')
      .place('kick', at('left', 2000, 'right of', 'lh.left'))
      .place('kick', flushWith('front', 'lh'))
      .place('kick', flushWith('bottom', 'lh'))
      .place('stud', at('left', x, 'right of', 'kick.left'))
      .place('stud', at('front', y, 'behind', 'kick.front'))
      .place('stud', at('bottom', z, 'above', 'kick.bottom'))
      .build();
    const kick = [
      [0, w],
      [0, SHEET],
      [0, h],
    ] as const;
    const stud = [
      [x, x + SHEET],
      [y, y + deep],
      [z, z + high],
    ] as const;
    const [found] = foundBy(partsOverlap, spec);
    const [, by = '', way = ''] = /Move one of them (\S+) (.*?), shorten/.exec(found ? words(found.cure) : '') ?? [];
    const clears = (axis: 0 | 1 | 2, move: number) =>
      [move, -move].some(
        (step) => stud[axis][1] + step <= kick[axis][0] + 1e-9 || stud[axis][0] + step >= kick[axis][1] - 1e-9,
      );
    expect(clears(AXES.indexOf(WAYS[way] ?? 'x') as 0 | 1 | 2, Number(by))).toBe(true);
    expect(([0, 1, 2] as const).filter((axis) => clears(axis, Number(by) - 0.01))).toEqual([]);
  });
});
