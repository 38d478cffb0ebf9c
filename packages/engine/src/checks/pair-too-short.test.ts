import { describe, expect, it } from 'vitest';
import { fit } from '../pipeline.js';
import type { Layout } from '../spec/stock.js';
import { words } from '../testing/found.js';
import { connect, datum, flush } from '../testing/joint-items.js';
import { lines } from '../testing/shop-builder.js';
import { sides } from '../testing/spec-builder.js';
import { mm } from '../testing/written.js';

const spread = (first: number, last: number): Layout => ({ kind: 'spread', first: mm(first), last: mm(last) });

/** A rail, standing, between two sides. */
const rail = (high: number, side: 'bottom' | 'top', connector: string, layout: Layout) =>
  fit(
    sides()
      .part('rail', 'facing')
      .of('height', high, 'rail')
      .joint('butt', 'rail', 'between lh and rh', flush('front', side), datum(side), connect(connector, layout))
      .build(),
  ).findings;

describe('the lines that are shown as a cure', () => {
  it.each([
    [90, 'bottom', 'tenon8', spread(60, 60)],
    [90, 'top', 'tenon8', spread(60, 60)],
    [200, 'top', 'biscuit20', spread(120, 120)],
    [300, 'bottom', 'biscuit20', lines(110, 150)],
  ] as const)('fit into the joint: %s from the %s, %s', (high, side, connector, layout) => {
    const found = rail(high, side, connector, layout).find(({ code }) => code === 'pair-too-short');
    const [, first, second] = / by lines ([\d.]+), ([\d.]+)\.$/.exec(found ? words(found.cure) : '') ?? [];
    expect([first, second]).not.toContain(undefined);
    const left = rail(high, side, connector, lines(first ?? '0', second ?? '0')).map(({ code }) => code);
    const ofLines = ['pair-too-short', 'slot-near-edge', 'fence-out-of-reach', 'no-connector-lands', 'slots-collide'];
    expect(left.filter((code) => ofLines.includes(code))).toEqual([]);
  });

  it('are left out where a machine’s body keeps the first from the fence', () => {
    const [found] = rail(160, 'bottom', 'biscuit20', spread(90, 90)).filter(({ code }) => code === 'pair-too-short');
    expect(found ? words(found.cure) : '').toMatch(/^Set the lines at least [\d.]+ apart\.$/);
  });
});
