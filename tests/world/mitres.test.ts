import { describe, expect, test } from 'vitest';
import { shopText } from '../support/fixture-shop.js';
import { codesOf, halfOf } from '../support/look.js';
import { fitText } from '../support/read.js';

interface Wishes {
  readonly at: string;
  readonly plunge: string;
  readonly thickness?: string;
  readonly from?: 'outer' | 'inner';
  readonly skin?: string;
  readonly wall?: string;
}

const mitred = ({ at, plunge, thickness = '18', from = 'inner', skin = '0', wall = '0' }: Wishes): string => `units mm
${shopText({ thickness, plunge, skin, wall, across: '15mm', along: '47mm', base: '9' })}
cabinet Case {
  part lh, rh : upright of board
  part top, base : level of board
  width 600 over lh and rh
  height 400 over base and top
  depth 300 of lh, rh, top, base
  butt base between lh and rh { flush bottom, front, rear  connect none "for the figure" }
  mitre top between lh and rh {
    outer top
    flush front, rear
    reference ${from}
    at ${at} from reference
    connect plate by lines 80, 220
  }
}
`;

const fails = async (wishes: Wishes): Promise<boolean> => {
  const codes = codesOf((await fitText(mitred(wishes))).findings);
  expect(codes.filter((code) => code !== 'mitre-no-room')).toEqual([]);
  return codes.length > 0;
};

// Plane geometry: a slot square to a 45° mitre face, its middle u from the heel, k wide and d deep, leaves
// t − (u + k/2 + d)/√2 under the outer face. t 18, k 4.
describe('material under the outer face of a mitre', () => {
  test.each([
    ['8', '12.3', '2.231', '2.232'],
    ['6', '12.3', '3.645', '3.646'],
    ['8', '10', '3.857', '3.858'],
    ['8', '8', '5.272', '5.273'],
    ['12.7279', '10', '0.514', '0.515'],
    ['12.7279', '8', '1.928', '1.929'],
  ])('%s from the heel, %s deep: %s is left, %s is not', async (at, plunge, least, most) => {
    expect(await fails({ at, plunge, skin: least })).toBe(false);
    expect(await fails({ at, plunge, skin: most })).toBe(true);
  });

  test('in the middle of the face a #20 breaks out of 18 mm by 1.11', async () => {
    const result = await fitText(mitred({ at: '12.7279', plunge: '12.3' }));
    expect(codesOf(result.findings)).toEqual(['mitre-no-room']);
  });
});

// The same geometry turned round: with 3 mm of skin the slot lies at most (t − 3)·√2 − k/2 − d from the heel, with
// 2 mm at most (t − 2)·√2 − k/2 − d.
describe('farthest from the heel that a slot may lie in 18 mm', () => {
  test.each([
    ['8', '3', '11.213', '11.214'],
    ['10', '3', '9.213', '9.214'],
    ['12.3', '3', '6.913', '6.914'],
    ['8', '2', '12.627', '12.628'],
    ['10', '2', '10.627', '10.628'],
    ['12.3', '2', '8.327', '8.328'],
  ])('%s deep with a skin of %s: %s passes, %s does not', async (plunge, skin, passes, doesNot) => {
    expect(await fails({ at: passes, plunge, skin })).toBe(false);
    expect(await fails({ at: doesNot, plunge, skin })).toBe(true);
  });
});

// Worked by hand from the same triangle, from the toe: with k 4, skin 3 and wall 3 the slot lies between
// k/2 + 3·√2 + p and t·√2 − k/2 − 3.
describe('where on a mitre face a slot fits, from the toe', () => {
  test.each([
    ['18', '12.3', '18.543', '20.455'],
    ['17.5', '12.3', '18.543', '19.748'],
    ['16', '8', '14.243', '17.627'],
  ])('%s board, %s deep: from %s to %s', async (thickness, plunge, least, most) => {
    const wishes = { thickness, plunge, from: 'outer', skin: '3', wall: '3' } as const;
    expect(await fails({ ...wishes, at: least })).toBe(false);
    expect(await fails({ ...wishes, at: most })).toBe(false);
    expect(await fails({ ...wishes, at: `${least} - 0.001` })).toBe(true);
    expect(await fails({ ...wishes, at: `${most} + 0.001` })).toBe(true);
  });

  test.each([
    ['16', '12.3', '15'],
    ['12', '8', '12'],
  ])('%s board, %s deep: nowhere', async (thickness, plunge, at) => {
    expect(await fails({ thickness, plunge, at, from: 'outer', skin: '3', wall: '3' })).toBe(true);
  });
});

// Common practice, no source: both parts of a mitre measured from toe, or both from heel, meet.
test('toe and heel measure the same face: t·√2 between them', async () => {
  const toe = halfOf(await fitText(mitred({ at: '18.5', plunge: '10', from: 'outer' })), 'top / lh', 'top');
  const heel = halfOf(await fitText(mitred({ at: '6', plunge: '10', from: 'inner' })), 'top / lh', 'top');
  expect([toe.from.kind, heel.from.kind]).toEqual(['toe', 'heel']);
  expect([toe.across.toString(), heel.across.toString()]).toEqual(['37/2', '6']);
});
