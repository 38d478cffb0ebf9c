import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vector } from '../geometry/vector.js';
import type { Piece } from './assembly.js';
import { runsInto, sharesRoom } from './sweep.js';

const box = (lo: Vector, hi: Vector): Piece => ({ lo, hi, slants: [] });

/** A rail 100 long whose ends are bevelled at 45°: long side down at z = 0, 20 thick. */
const mitred = (x: number, y: number, z: number): Piece => ({
  lo: [x, y, z],
  hi: [x + 100, y + 30, z + 20],
  slants: [
    { normal: [1, 0, 1], offset: x + 100 + z },
    { normal: [-1, 0, 1], offset: -x + z },
  ],
  core: { lo: [x + 20, y, z], hi: [x + 80, y + 30, z + 20] },
});

const at = (piece: Piece, by: Vector): Piece => {
  const move = (v: Vector): Vector => [v[0] + by[0], v[1] + by[1], v[2] + by[2]];
  return {
    lo: move(piece.lo),
    hi: move(piece.hi),
    slants: piece.slants.map(({ normal, offset }) => ({
      normal,
      offset: offset + normal[0] * by[0] + normal[1] * by[1] + normal[2] * by[2],
    })),
  };
};

describe('a moving piece', () => {
  it('passes through the corner that a bevel has taken off, and meets what is left', () => {
    const rail = mitred(0, 0, 0);
    const inCorner = box([92, -50, 12], [100, -40, 20]);
    const nearer = box([70, -50, 12], [78, -40, 20]);
    const back: Vector = [0, 1, 0];
    expect(runsInto(inCorner, rail, { way: back, upTo: Number.POSITIVE_INFINITY })).toBe(false);
    expect(runsInto(nearer, rail, { way: back, upTo: Number.POSITIVE_INFINITY })).toBe(true);
    expect(runsInto(nearer, rail, { way: back, upTo: 39 })).toBe(false);
    expect(runsInto(nearer, rail, { way: back, upTo: 41 })).toBe(true);
  });

  it('meets what it would share room with at some time of its way', () => {
    const step = fc.integer({ min: -4, max: 4 }).map((n) => n * 10 + 1);
    const way = fc.constantFrom<Vector>([1, 0, 0], [0, -1, 0], [0, 0, 1], [1, 0, 1], [-1, 0, 1]);
    let [hits, misses] = [0, 0];
    fc.assert(
      fc.property(step, step, step, way, fc.boolean(), (x, y, z, along, both) => {
        const rail = mitred(0, 0, 0);
        const other = both ? mitred(x, y, z) : box([x, y, z], [x + 25, y + 25, z + 25]);
        fc.pre(!sharesRoom(other, rail));
        const met = runsInto(other, rail, { way: along, upTo: 300 });
        let seen = false;
        for (let t = 0.25; t < 300 && !seen; t += 0.5)
          seen = sharesRoom(at(other, [along[0] * t, along[1] * t, along[2] * t]), rail);
        if (met) hits++;
        else misses++;
        // Half a millimetre at a time: what is met for less may be passed over, and nothing here is.
        expect(met).toBe(seen);
      }),
      { numRuns: 400, seed: 9 },
    );
    expect(Math.min(hits, misses)).toBeGreaterThan(20);
  });
});
