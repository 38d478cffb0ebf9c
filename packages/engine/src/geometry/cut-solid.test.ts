import { describe, expect, it } from 'vitest';
import { boundedOf } from '../number/bounded.js';
import { Rational } from '../number/rational.js';
import { boundsOf, type OnMitre, type OpeningCut, openingSolid } from './cut-solid.js';
import { distance } from './distance.js';
import { mitreSkin, mitreWall } from './mitre.js';
import { boxShape } from './shapes.js';
import { place } from './solid.js';
import type { Vector } from './vector.js';

const mm = (text: string): Rational => {
  const value = Rational.parse(text);
  if (!value) throw new Error(`${text} is no length`);
  return value;
};

const cut = (more: Partial<OpeningCut>): OpeningCut =>
  ({
    kind: 'disc',
    slot: 'shelf / lh lh 1',
    surface: 'right',
    centre: { x: mm('18'), y: mm('200'), z: mm('109.5') },
    run: 'y',
    diameter: mm('100'),
    width: mm('4'),
    depth: mm('12.3'),
    length: boundedOf(mm('65.6874')),
    joint: 'shelf / lh',
    source: { uri: 'test:', start: 0, end: 0 },
    ...more,
  }) as OpeningCut;

describe('where a slot lies in its part', () => {
  it('a disc goes into its surface and runs along its run', () => {
    const { lo, hi } = openingSolid(cut({}));
    // Half the chord, 32.8437, to either side; 12.3 in from the face; half the kerf up and down.
    expect(lo.map((x) => Number(x.toFixed(3)))).toEqual([5.7, 167.156, 107.5]);
    expect(hi.map((x) => Number(x.toFixed(3)))).toEqual([18, 232.844, 111.5]);
  });

  it('a mortise in a lower edge goes up', () => {
    const { lo, hi } = openingSolid(
      cut({
        kind: 'mortise',
        surface: 'bottom',
        run: 'x',
        width: mm('8'),
        depth: mm('28'),
        length: boundedOf(mm('23')),
      }),
    );
    expect(lo).toEqual([6.5, 196, 109.5]);
    expect(hi).toEqual([29.5, 204, 137.5]);
  });

  it('a hole is as wide as its drill', () => {
    const { lo, hi } = openingSolid(
      cut({ kind: 'hole', surface: 'front', run: 'x', diameter: mm('8'), depth: mm('20') }),
    );
    expect(lo).toEqual([14, 200, 105.5]);
    expect(hi).toEqual([22, 220, 113.5]);
  });
});

// The mitre's own formulas, worked from the triangle of the mitre, must agree with the body that the slot is.
describe('a slot in the mitred left end of a level part 18 thick', () => {
  const toe = { x: mm('0'), y: mm('200'), z: mm('900') };
  const mitre = (fromToe: number): OnMitre => ({ outer: 'top', fromToe });
  const body = (fromToe: string, depth: string) =>
    openingSolid(cut({ surface: 'left', centre: toe, depth: mm(depth) }), mitre(mm(fromToe).toNumber()));
  /** A thin plate that lies on the outer face, or a needle along the heel. */
  const plate = place(boxShape(900, 900, 1), { origin: [0, 200, 900], u: [1, 0, 0], v: [0, 1, 0], w: [0, 0, 1] });
  const heel = place(boxShape(0, 900, 0), { origin: [18, 200, 882], u: [1, 0, 0], v: [0, 1, 0], w: [0, 0, 1] });

  it.each([
    ['17.4558', '12.3'],
    ['19.4558', '12.3'],
    ['12.7279', '10'],
    ['17.4558', '8'],
  ])('%s from the toe, %s deep: skin and wall as in the triangle', (fromToe, depth) => {
    const solid = body(fromToe, depth);
    expect(distance(solid, plate, 0).value).toBeCloseTo(mitreSkin(mm(fromToe), mm('4'), mm(depth)).value, 5);
    expect(distance(solid, heel, 0).value).toBeCloseTo(mitreWall(mm('18'), mm(fromToe), mm('4')).value, 5);
  });

  it.each([
    ['9.5', '10', 22.5],
    ['11', '12.3', 22.5],
    ['8', '8', 18.4349],
    ['14', '6', 31.7175],
  ])('%s from the toe, %s deep, %s° off square: the same', (fromToe, depth, angle) => {
    const slot = cut({ surface: 'left', centre: toe, depth: mm(depth) });
    const solid = openingSolid(slot, { outer: 'top', fromToe: mm(fromToe).toNumber(), angle });
    const corner: Vector = [18 * Math.tan((angle * Math.PI) / 180), 200, 882];
    const needle = place(boxShape(0, 900, 0), { origin: corner, u: [1, 0, 0], v: [0, 1, 0], w: [0, 0, 1] });
    expect(distance(solid, plate, 0).value).toBeCloseTo(mitreSkin(mm(fromToe), mm('4'), mm(depth), angle).value, 5);
    expect(distance(solid, needle, 0).value).toBeCloseTo(mitreWall(mm('18'), mm(fromToe), mm('4'), angle).value, 5);
  });

  it('breaks out of the outer face in the middle of the mitre at a plunge of 12.3, by 1.1116', () => {
    const up: Vector = [0, 0, 1];
    expect(body('12.7279', '12.3').farthest(up)[2] - 900).toBeCloseTo(1.1116, 4);
  });
});

it.each([
  cut({}),
  cut({ surface: 'left', depth: mm('60'), length: boundedOf(mm('100')) }),
  cut({ kind: 'mortise', surface: 'bottom', run: 'x', width: mm('8'), length: boundedOf(mm('23')) }),
  cut({ kind: 'hole', surface: 'rear', run: 'z', diameter: mm('8'), width: mm('8'), length: boundedOf(mm('8')) }),
])('the box around a slot is the box around its body: $kind from the $surface', (slot) => {
  const bounds = boundsOf(slot, [1, 2, 3]);
  const solid = openingSolid(slot, undefined, [1, 2, 3]);
  for (const i of [0, 1, 2] as const) {
    expect(bounds.lo[i]).toBeCloseTo(solid.lo[i], 4);
    expect(bounds.hi[i]).toBeCloseTo(solid.hi[i], 4);
  }
});
