import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import { foundBy } from '../testing/found.js';
import { at, fact, flush, setBack } from '../testing/joint-items.js';
import { lines } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { slotNearEdge } from './slot-near-edge.js';

/** A shelf short of its sides by 28 at the rear and by so much in front, with one line of its own. */
const shelfWith = (line: Rational, front: number) =>
  sides()
    .part('shelf', 'level')
    .connect('biscuit20', lines(line.toString()))
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      fact(at('bottom', 100, 'above', 'lh.bottom')),
      fact(setBack('rear', 28, 'lh')),
      front === 0 ? flush('front') : fact(setBack('front', front, 'lh')),
    )
    .build();

describe('the line a finding says to move to', () => {
  it.each([
    ['rear', '70', 0],
    ['front', '530', 0],
    ['front', '500', 30],
  ])('is the nearest hundredth that leaves enough to the %s edge, setbacks counted', (edge, written, front) => {
    const found = foundBy(slotNearEdge, shelfWith(Rational.parse(written) ?? Rational.ZERO, front));
    expect(found.map(({ data }) => data?.edge)).toContain(edge);
    const own = found.find(({ data, about }) => data?.edge === edge && about.parts?.includes('shelf'));
    const to = Rational.parse(String(own?.data?.to)) ?? Rational.ZERO;
    const shelfs = (line: Rational) =>
      foundBy(slotNearEdge, shelfWith(line, front)).filter(({ about }) => about.parts?.includes('shelf'));
    expect(shelfs(to)).toEqual([]);
    const nearer = Rational.of(edge === 'rear' ? -1 : 1, 100);
    expect(shelfs(to.add(nearer))).toHaveLength(1);
  });
});
