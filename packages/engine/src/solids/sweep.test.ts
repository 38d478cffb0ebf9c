import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairsWithin } from './sweep.js';

const span = fc.tuple(fc.integer({ min: -100, max: 100 }), fc.integer({ min: 0, max: 40 }));
const items = fc.array(fc.tuple(span, span, span), { maxLength: 40 }).map((boxes) =>
  boxes.map(([x, y, z], name) => ({
    name,
    bounds: {
      lo: [x[0], y[0], z[0]] as const,
      hi: [x[0] + x[1], y[0] + y[1], z[0] + z[1]] as const,
    },
  })),
);

describe('sort and sweep', () => {
  it('finds the pairs that looking at every pair finds, each once', () => {
    fc.assert(
      fc.property(items, fc.integer({ min: 0, max: 20 }), (boxes, within) => {
        const name = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);
        const swept = [...pairsWithin(boxes, within)].map(([a, b]) => name(a.name, b.name));
        const every = boxes.flatMap((a, i) =>
          boxes
            .slice(i + 1)
            .filter((b) =>
              ([0, 1, 2] as const).every(
                (k) => a.bounds.lo[k] - b.bounds.hi[k] < within && b.bounds.lo[k] - a.bounds.hi[k] < within,
              ),
            )
            .map((b) => name(a.name, b.name)),
        );
        expect(swept.sort()).toEqual(every.sort());
      }),
    );
  });
});
