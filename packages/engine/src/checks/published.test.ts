import { describe, expect, it } from 'vitest';
import { INCH } from '../number/format.js';
import { Rational } from '../number/rational.js';
import { foundBy, words } from '../testing/found.js';
import { across, at, connect, fact, flush, flushWith } from '../testing/joint-items.js';
import { connector, lines, machine, material, shop } from '../testing/shop-builder.js';
import { cabinet } from '../testing/spec-builder.js';
import { jointBottomsOut } from './joint-bottoms-out.js';
import { slotBreaksThrough } from './slot-breaks-through.js';
import { slotsCollide } from './slots-collide.js';
import { thinWall } from './thin-wall.js';

type Numeral = number | string;

/** A fraction of an inch, in mm. */
const inch = (n: number, d: number): string => `${INCH.mul(Rational.of(n, d))}`;

/** A shelf between two sides, all of one sheet, held by dowels in the middle of its thickness. */
function dowelled(
  sheet: Numeral,
  diameter: Numeral,
  wall: Numeral,
  plunge = { face: 11, edge: 21 } as { face: Numeral; edge: Numeral },
  length: Numeral = 30,
) {
  const stock = shop({
    materials: [material('sheet', sheet)],
    machines: [machine('drill', 'drill', { diameter, base: 5, to: 30 })],
    connectors: [
      connector('dowel', 'dowel', {
        along: diameter,
        across: length,
        thickness: diameter,
        clearance: 2,
        machine: 'drill',
        ...plunge,
      }),
    ],
    limits: { wall },
  });
  return cabinet(stock)
    .part('lh, rh', 'upright', 'sheet')
    .part('shelf', 'level', 'sheet')
    .over('width', 600, 'lh', 'rh')
    .of('height', 300, 'lh, rh')
    .of('depth', 320, 'lh, rh')
    .joint(
      'butt',
      'shelf',
      'between lh and rh',
      fact(at('bottom', 100, 'above', 'lh.bottom')),
      flush('rear', 'front'),
      across('centred'),
      connect('dowel', lines(60, 260)),
    )
    .build();
}

// woodweb.com, "Dowel drilling and use guidelines", 1998: from the dowel to the face at least the dowel's radius, so
// that it is at most half the thickness.
describe('the wall beside a dowel is at least its radius', () => {
  it.each([
    ['18', '8', '4', true],
    ['18', '10', '5', false],
    ['16', '8', '4', true],
    [inch(3, 4), inch(3, 8), inch(3, 16), true],
    [inch(23, 32), inch(3, 8), inch(3, 16), false],
    [inch(23, 32), inch(5, 16), inch(5, 32), true],
  ])('in %s a dowel of %s, wall %s: %s', (sheet, diameter, radius, passes) => {
    expect(foundBy(thinWall, dowelled(sheet, diameter, radius)).length === 0).toBe(passes);
  });
});

// The same: two thirds of the length in the edge, one third in the face, and 1 mm more at the bottom of each for glue.
describe('a dowel is two thirds in the edge and one third in the face', () => {
  it.each([
    [30, '11', '21', '7'],
    [40, '43/3', '83/3', '3.67'],
  ])('of %d: %s in the face and %s in the edge close the joint and leave %s in 18', (length, face, edge, left) => {
    const spec = dowelled(18, 8, 4, { face, edge }, length);
    expect(foundBy(jointBottomsOut, spec)).toEqual([]);
    expect(foundBy(jointBottomsOut, dowelled(18, 8, 4, { face: 10, edge }, length))).toHaveLength(1);
    const thick = {
      ...spec,
      shop: { ...spec.shop, limits: { ...spec.shop.limits, skin: spec.shop.limits.slotToEdge } },
    };
    expect(
      foundBy(slotBreaksThrough, thick)
        .map(({ message }) => words(message))
        .join(),
    ).toContain(` leave ${left} of 18`);
  });
});

/** Shelves at one height on both sides of a divider, their slots on the same lines; `plunge` of a disc of 100. */
function opposed(sheet: Numeral, plunge: Numeral) {
  const stock = shop({
    materials: [material('sheet', sheet)],
    connectors: [
      connector('plate', 'biscuit', { along: 20, across: 15, thickness: 4, face: plunge, machine: 'joiner' }),
    ],
    limits: { skin: 100 },
  });
  const shelf = (name: string, hosts: string) =>
    [
      name,
      hosts,
      fact(at('bottom', 100, 'above', 'lh.bottom')),
      flush('rear', 'front'),
      connect('plate', lines(160)),
    ] as const;
  const spec = cabinet(stock)
    .part('lh, divider, rh', 'upright', 'sheet')
    .part('one, two', 'level')
    .over('width', 800, 'lh', 'rh')
    .of('height', 300, 'lh, rh, divider')
    .of('depth', 320, 'lh, rh, divider')
    .between('width', 380, 'lh', 'divider')
    .place('divider, rh', flushWith('bottom', 'lh'));
  const [one, hostsOne, ...factsOne] = shelf('one', 'between lh and divider');
  const [two, hostsTwo, ...factsTwo] = shelf('two', 'between divider and rh');
  return spec
    .joint('butt', one, hostsOne, ...factsOne)
    .joint('butt', two, hostsTwo, ...factsTwo)
    .build();
}

// Plane geometry; the plunges 8.0, 10.0 and 12.3 for #0, #10 and #20 are trade figures from memory.
describe('what a slot leaves of a sheet', () => {
  it.each([
    [18, 8, '10'],
    [18, 10, '8'],
    [18, '12.3', '5.7'],
    [12, 8, '4'],
    [12, 10, '2'],
    [15, '12.3', '2.7'],
    [16, '12.3', '3.7'],
    [inch(23, 32), '12.3', '5.96'],
  ])('of %s at a plunge of %s: %s', (sheet, plunge, left) => {
    const found = foundBy(slotBreaksThrough, opposed(sheet, plunge)).map(({ message }) => words(message));
    expect(found.join()).toContain(`leave ${left} of `);
  });

  it('nothing of 12 at 12.3: it comes 0.3 out', () => {
    const found = foundBy(slotBreaksThrough, opposed(12, '12.3')).map(({ message }) => words(message));
    expect(found.join()).toContain('by 0.3');
  });

  it.each([
    [8, 'come within 2 of each other'],
    [10, 'run into each other'],
    ['12.3', 'run into each other'],
  ])('between two at one place from both faces of 18, %s deep: they %s', (plunge, outcome) => {
    const found = foundBy(slotsCollide, opposed(18, plunge)).map(({ message }) => words(message));
    expect(found.find((message) => message.startsWith('in divider'))).toContain(outcome);
  });
});
