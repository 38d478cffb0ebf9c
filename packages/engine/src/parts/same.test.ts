import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box, Cut, FittedPart, Point } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { type Attitude, AXES, type Axis, axisOf, opposite, SIDES, type Side, thicknessAxis } from '../spec/sides.js';
import { liesAlike } from './lying.js';
import { mayMirror, numberPieces, pieceSignature } from './same.js';

const source = { uri: 'test:a.joinery', start: 0, end: 1 };
const SIZE: Record<Axis, number> = { x: 600, y: 400, z: 300 };

interface Hole {
  readonly surface: Side;
  readonly at: Record<Axis, number>;
}

/** A part with holes and one recess, standing somewhere in the cabinet. */
function part(
  attitude: Attitude,
  grain: Axis,
  holes: readonly Hole[],
  at = 0,
  turn: (p: Point, s: Side) => [Point, Side] = (p, s) => [p, s],
): FittedPart {
  const thick = thicknessAxis(attitude);
  const size = { ...SIZE, [thick]: 18 };
  const offset = (value: number): Rational => Rational.of(value + at * 7);
  const box: Box = {
    lo: { x: offset(0), y: offset(0), z: offset(0) },
    hi: { x: offset(size.x), y: offset(size.y), z: offset(size.z) },
  };
  const middle = (axis: Axis): Rational => box.lo[axis].add(box.hi[axis]).div(Rational.TWO);
  const cuts = holes.map((hole, i): Cut => {
    const own: Point = { x: Rational.of(hole.at.x), y: Rational.of(hole.at.y), z: Rational.of(hole.at.z) };
    const [turned, surface] = turn(own, hole.surface);
    const centre = { x: turned.x.add(middle('x')), y: turned.y.add(middle('y')), z: turned.z.add(middle('z')) };
    return {
      kind: 'hole',
      slot: `${i}`,
      surface,
      centre,
      run: AXES.find((axis) => axis !== axisOf(surface)) as Axis,
      diameter: Rational.of(8),
      width: Rational.of(8),
      depth: Rational.of(10),
      length: { value: 8, error: 0 },
      joint: 'j',
      source,
    };
  });
  return {
    id: `part ${at}`,
    kind: 'part',
    attitude,
    material: 'board',
    source,
    box,
    extent: { x: Rational.of(size.x), y: Rational.of(size.y), z: Rational.of(size.z) },
    grain,
    bands: [],
    cuts,
    same: 0,
  };
}

/** Turns the piece half round about an axis, or mirrors it across the plane through its middle. */
const halfTurn = (about: Axis) => flip(AXES.filter((axis) => axis !== about));
const mirror = (across: Axis) => flip([across]);

function flip(axes: readonly Axis[]) {
  return (p: Point, side: Side): [Point, Side] => {
    const turned = { ...p };
    for (const axis of axes) turned[axis] = p[axis].neg();
    return [turned, axes.includes(axisOf(side)) ? opposite(side) : side];
  };
}

const axis = fc.constantFrom<Axis>('x', 'y', 'z');
const holes = fc.array(
  fc.record({
    surface: fc.constantFrom(...SIDES),
    at: fc.record({
      x: fc.integer({ min: -9, max: 9 }),
      y: fc.integer({ min: -9, max: 9 }),
      z: fc.integer({ min: -9, max: 9 }),
    }),
  }),
  { maxLength: 4 },
);
const attitude = fc.constantFrom<Attitude>('upright', 'level', 'facing');

describe('the same piece', () => {
  it('stays the same piece turned half round about any axis, wherever it stands', () => {
    fc.assert(
      fc.property(attitude, axis, holes, axis, fc.nat(20), (stands, grain, cut, about, at) => {
        const one = part(stands, grain, cut);
        const other = part(stands, grain, cut, at + 1, halfTurn(about));
        expect(pieceSignature(other)).toBe(pieceSignature(one));
        expect(numberPieces([one, other]).map(({ same }) => same)).toEqual([0, 0]);
      }),
    );
  });

  it('is its mirror image exactly when the mirrored signature says so', () => {
    fc.assert(
      fc.property(attitude, axis, holes, axis, (stands, grain, cut, across) => {
        const one = part(stands, grain, cut);
        const image = part(stands, grain, cut, 1, mirror(across));
        expect(pieceSignature(image)).toBe(pieceSignature(one, true));
        expect(mayMirror(one, image)).toBe(true);
        const [first, second] = numberPieces([one, image]);
        expect(first?.same === second?.same).toBe(pieceSignature(one) === pieceSignature(one, true));
      }),
    );
  });

  it('lies alike where it has only been moved, and is the same piece wherever it lies alike', () => {
    fc.assert(
      fc.property(attitude, axis, holes, axis, fc.nat(20), (stands, grain, cut, about, at) => {
        const one = part(stands, grain, cut);
        expect(liesAlike(one, part(stands, grain, cut, at))).toBe(true);
        const turned = part(stands, grain, cut, at, halfTurn(about));
        const mirrored = part(stands, grain, cut, at, mirror(about));
        for (const other of [turned, mirrored]) {
          if (liesAlike(one, other)) expect(pieceSignature(other)).toBe(pieceSignature(one));
        }
        const [first, ...rest] = cut;
        if (!first) return;
        const shifted = { ...first, at: { ...first.at, x: first.at.x + 1 } };
        expect(liesAlike(one, part(stands, grain, [shifted, ...rest], at))).toBe(false);
      }),
    );
  });

  it('is not another hand: a hole off the middle three ways', () => {
    const cut: readonly Hole[] = [{ surface: 'top', at: { x: 5, y: 3, z: 1 } }];
    const pair = [part('level', 'x', cut), part('level', 'x', cut, 1, mirror('y'))];
    expect(numberPieces(pair).map(({ same }) => same)).toEqual([0, 1]);
  });

  it('is another piece when one is larger, cut otherwise or of other stuff', () => {
    const one = part('level', 'x', []);
    const others = [{ ...one, material: 'ply' }, part('level', 'x', [{ surface: 'top', at: { x: 0, y: 0, z: 0 } }])];
    expect(numberPieces([one, ...others]).map(({ same }) => same)).toEqual([0, 1, 2]);
  });

  it('is told apart from every other while its sizes are not known', () => {
    const unknown = { ...part('level', 'x', []), box: undefined };
    expect(numberPieces([unknown, { ...unknown, id: 'other' }]).map(({ same }) => same)).toEqual([0, 1]);
    expect(numberPieces([unknown, unknown]).map(({ same }) => same)).toEqual([0, 1]);
    expect(pieceSignature(unknown)).toBeUndefined();
  });
});
