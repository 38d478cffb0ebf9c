import { describe, expect, it } from 'vitest';
import type { Spec } from '../spec/spec.js';
import { foundBy, words } from '../testing/found.js';
import { at, fact, flush, flushWith, openings } from '../testing/joint-items.js';
import { cabinet, sides } from '../testing/spec-builder.js';
import { openingsNegative } from './openings-negative.js';
import { partsOverlap } from './parts-overlap.js';
import { sizeNotPositive } from './size-not-positive.js';

const told = (spec: Spec) => foundBy(openingsNegative, spec).map(({ message }) => words(message));

/** What the checks say that see nothing but the result. */
const others = (spec: Spec) => [partsOverlap, sizeNotPositive].flatMap((check) => foundBy(check, spec));

/** Shelves spread over the clear height between two boards. */
const spread = (clear: number, shelves: number) =>
  sides()
    .part('base, top', 'level')
    .joint('butt', 'base', 'between lh and rh', flush('bottom', 'rear', 'front'))
    .joint('butt', 'top', 'between lh and rh', flush('rear', 'front'))
    .between('height', clear, 'base', 'top')
    .likeParts('shelf', shelves, 'level')
    .joint('butt', 'shelf', 'between lh and rh', fact(openings('base.top', 'top.bottom')), flush('rear', 'front'))
    .build();

/** A shelf between two sides that stand so far apart. */
const apart = (width: number) =>
  cabinet()
    .part('lh, rh', 'upright')
    .part('shelf', 'level')
    .between('width', width, 'lh', 'rh')
    .of('height', 300, 'lh, rh')
    .of('depth', 320, 'lh, rh')
    .place('rh', flushWith('bottom', 'lh'))
    .place('rh', flushWith('rear', 'lh'))
    .joint('butt', 'shelf', 'between lh and rh', fact(at('bottom', 100, 'above', 'lh.bottom')), flush('rear', 'front'))
    .build();

describe('parts that are pressed together by it have no finding of their own', () => {
  it.each([1, 2, 4])('%i shelves with too little room', (shelves) => {
    const spec = spread(10, shelves);
    expect(told(spec)).toHaveLength(1);
    expect(others(spec)).toEqual([]);
  });

  it.each([0, -5])('sides with %i between them', (width) => {
    const spec = apart(width);
    expect(told(spec)).toEqual([`the clear width between lh and rh is ${width}, which leaves no opening`]);
    expect(others(spec)).toEqual([]);
  });
});

it('parts that overlap for another reason are told', () => {
  const spec = spread(600, 2);
  expect(told(spec)).toEqual([]);
  const crossed = sides()
    .part('one, two', 'level')
    .joint('butt', 'one', 'between lh and rh', fact(at('bottom', 100, 'above', 'lh.bottom')), flush('rear', 'front'))
    .joint('butt', 'two', 'between lh and rh', fact(at('bottom', 110, 'above', 'lh.bottom')), flush('rear', 'front'))
    .build();
  expect(others(crossed)).toHaveLength(1);
});
