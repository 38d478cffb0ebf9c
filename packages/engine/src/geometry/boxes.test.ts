import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Box } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { boundsOfBox } from '../solids/body.js';
import { AXES } from '../spec/sides.js';
import { boundsWithoutAll, common, extentOf, withoutAll } from './boxes.js';

const SIZE = 6;
const interval = fc
  .tuple(fc.integer({ min: 0, max: SIZE - 1 }), fc.integer({ min: 1, max: SIZE }))
  .map(([a, b]) => (a < b ? [a, b] : [b - 1, a + 1]) as [number, number]);
const box = fc.tuple(interval, interval, interval).map(([x, y, z]): Box => {
  const point = (i: 0 | 1) => ({ x: Rational.of(x[i]), y: Rational.of(y[i]), z: Rational.of(z[i]) });
  return { lo: point(0), hi: point(1) };
});

const volume = (b: Box): number => AXES.reduce((product, axis) => product * extentOf(b, axis).toNumber(), 1);
const holds = (b: Box, cell: { x: number; y: number; z: number }): boolean =>
  AXES.every((axis) => b.lo[axis].toNumber() <= cell[axis] && b.hi[axis].toNumber() >= cell[axis] + 1);

it('takes boxes out of a box cell by cell', () => {
  fc.assert(
    fc.property(box, fc.array(box, { maxLength: 4 }), (from, taken) => {
      const left = withoutAll(from, taken);
      let cells = 0;
      for (let x = 0; x < SIZE; x++)
        for (let y = 0; y < SIZE; y++)
          for (let z = 0; z < SIZE; z++) {
            const cell = { x, y, z };
            const wanted = holds(from, cell) && !taken.some((t) => holds(t, cell));
            if (wanted) cells++;
            expect(left.filter((piece) => holds(piece, cell)).length).toBe(wanted ? 1 : 0);
          }
      expect(left.reduce((sum, piece) => sum + volume(piece), 0)).toBe(cells);
    }),
  );
});

it('takes boxes out of a box in doubles as it does exactly, in the same order', () => {
  fc.assert(
    fc.property(box, fc.array(box, { maxLength: 4 }), (from, taken) => {
      const left = boundsWithoutAll(boundsOfBox(from), taken.map(boundsOfBox));
      expect(left).toEqual(withoutAll(from, taken).map(boundsOfBox));
    }),
  );
});

it('finds nothing common where boxes only touch', () => {
  const unit = (x: number): Box => {
    const at = (v: number) => ({ x: Rational.of(v), y: Rational.of(v - x), z: Rational.of(v - x) });
    return { lo: at(x), hi: at(x + 1) };
  };
  expect(common(unit(0), unit(1))).toBeUndefined();
  expect(common(unit(0), unit(0))).toEqual(unit(0));
});
