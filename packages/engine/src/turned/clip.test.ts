import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import { solveSpec } from '../sizes/solved.js';
import type { Axis, Side } from '../spec/sides.js';
import { cabinet } from '../testing/spec-builder.js';
import { clipCant } from './clip.js';

const mm = (n: number): Rational => Rational.of(n);
const range = (lo: number, hi: number) => ({ lo: mm(lo), hi: mm(hi) });

/** A board 600 x 500 with a corner cut off, 240 along its width and 200 along its depth. */
const board = (corner: readonly [Side, Side]) =>
  solveSpec(
    cabinet()
      .part('board', 'level')
      .of('width', 600, 'board')
      .of('depth', 500, 'board')
      .cant('board', corner, { width: 240, depth: 200 })
      .build(),
  );

describe('what a cant leaves of a contact', () => {
  it('takes its whole leg off an edge of its corner', () => {
    const solved = board(['front', 'right']);
    const left = (surface: Side, run: Axis) =>
      clipCant(solved, 'board', surface, range(0, run === 'x' ? 600 : 500), run, range(0, 18));
    expect(left('front', 'x')).toEqual(range(0, 360));
    expect(left('right', 'y')).toEqual(range(200, 500));
    expect(left('rear', 'x')).toEqual(range(0, 600));
    expect(left('left', 'y')).toEqual(range(0, 500));
  });

  // Plane geometry: 18 behind the front the line of the cant lies at 600 − 240 · (1 − 18/200) = 381.6 … but 0 behind it
  // at 360, where the contact is narrowest.
  it('takes off a face what the near end of the contact loses', () => {
    const solved = board(['front', 'right']);
    expect(clipCant(solved, 'board', 'top', range(0, 600), 'x', range(0, 18))).toEqual(range(0, 360));
    expect(clipCant(solved, 'board', 'top', range(0, 600), 'x', range(50, 68))).toEqual(range(0, 420));
    expect(clipCant(solved, 'board', 'top', range(0, 600), 'x', range(200, 218))).toEqual(range(0, 600));
  });

  it('leaves nothing where all of it lies in the corner', () => {
    const solved = board(['front', 'right']);
    expect(clipCant(solved, 'board', 'top', range(400, 600), 'x', range(0, 18))).toBeUndefined();
  });

  it('leaves exactly what is wood across the whole contact, at any corner', () => {
    const corners = fc.constantFrom<readonly [Side, Side]>(
      ['front', 'right'],
      ['left', 'front'],
      ['rear', 'left'],
      ['right', 'rear'],
    );
    fc.assert(
      fc.property(corners, fc.integer({ min: 0, max: 480 }), (corner, y) => {
        const solved = board(corner);
        const left = clipCant(solved, 'board', 'top', range(0, 600), 'x', range(y, y + 18));
        const wood = (px: number, py: number): boolean => {
          const dx = corner.includes('right') ? 600 - px : px;
          const dy = corner.includes('rear') ? 500 - py : py;
          return dx / 240 + dy / 200 >= 1 - 1e-9;
        };
        for (let x = 0; x <= 600; x += 7) {
          const inside = left !== undefined && x >= left.lo.toNumber() - 1e-9 && x <= left.hi.toNumber() + 1e-9;
          expect(inside).toBe(wood(x, y) && wood(x, y + 18));
        }
      }),
    );
  });
});
