import type { Shop, Stock } from '@dryfit/engine';
import { beforeAll, describe, expect, test } from 'vitest';
import { hoverIn } from '../../packages/language/src/hover/hover.fixture.js';
import { exactly } from '../support/look.js';
import { fitText } from '../support/read.js';

const text = (connector: string): string => `units mm
import "dryfit:connectors"
import "dryfit:sheets"
import "dryfit:bands"
cabinet Case {
  part lh, rh : upright of plywood18
  part shelf : level of plywood18
  width 600 over lh and rh
  height 700 of lh, rh
  depth 300 of lh, rh
  lh.bottom flush with rh
  lh.rear flush with rh
  butt shelf between lh and rh {
    bottom 300 above lh.bottom
    flush front, rear
    connect ${connector} by lines 80, 220
  }
}
`;

let shop: Shop;
beforeAll(async () => {
  shop = (await fitText(text('biscuit20'))).spec.shop;
});

const connector = (name: string) => {
  const found = shop.connectors.get(name);
  if (!found) throw new Error(`no ${name} in the library`);
  return found;
};

// #0 and #10: an Iranian journal of wood products (jfwp.ut.ac.ir, article 60615, abstract) with engineerfix.com and a
// trade glossary after an encyclopaedia (gethammerelectric.com). #20: the glossary; others give 60 × 23, so that its
// length is to be measured. The plunges are trade figures, from memory.
describe('biscuits of the library', () => {
  test.each([
    ['biscuit0', '47', '15', '8'],
    ['biscuit10', '53', '19', '10'],
    ['biscuit20', '56', '23', '12.3'],
  ])('%s is %s × %s, plunged %s from memory', (name, along, across, plunge) => {
    const one = connector(name);
    expect([one.along, one.across, one.plunge.face, one.plunge.edge].map((length) => exactly(length))).toEqual([
      along,
      across,
      plunge,
      plunge,
    ]);
    expect(one.provenance).toMatch(/plunge: from memory/);
  });

  test('#20 says that its length is not agreed on', () => {
    expect(connector('biscuit20').provenance).toMatch(/60 x 23/);
  });

  // Plane geometry: a biscuit is at most the lens that a disc of 100 leaves from both sides, 2·√(w/2·(100 − w/2)).
  test.each([
    ['biscuit0', 52.68],
    ['biscuit10', 58.64],
    ['biscuit20', 63.8],
  ])('%s is shorter than the whole lens of its width, %d', (name, lens) => {
    const half = connector(name).across.toNumber() / 2;
    expect(2 * Math.sqrt(half * (100 - half))).toBeCloseTo(lens, 2);
    expect(connector(name).along.toNumber()).toBeLessThan(lens);
  });
});

// A trade forum of wood manufacturers (woodweb.com, "Dowel drilling and use guidelines", 1998): two thirds of a dowel
// in the edge, one third in the face, and 1 mm more in both holes.
describe('dowels of the library', () => {
  test.each([
    ['dowel8x30', '21', '11'],
    ['dowel8x40', '27 2/3', '14 1/3'],
  ])('%s goes %s into an edge and %s into a face', (name, edge, face) => {
    const { plunge } = connector(name);
    expect([exactly(plunge.edge), exactly(plunge.face)]).toEqual([edge, face]);
    expect(connector(name).provenance).toMatch(/woodweb/);
  });
});

// Makers' tables of sanded plywood; they are the formula of EN 315 cut off at tenths from 12 mm upward only.
describe('plywood of the library, makers of plywood to EN 315', () => {
  test.each([
    ['plywood4', '4', '0.3', '0.5'],
    ['plywood6_5', '6.5', '0.4', '0.5'],
    ['plywood9', '9', '0.4', '0.5'],
    ['plywood12', '12', '0.5', '0.7'],
    ['plywood15', '15', '0.6', '0.8'],
    ['plywood18', '18', '0.7', '0.9'],
    ['plywood21', '21', '0.8', '1'],
    ['plywood24', '24', '0.9', '1.1'],
    ['plywood27', '27', '1', '1.2'],
    ['plywood30', '30', '1.1', '1.3'],
  ])('%s: %s plus %s minus %s', (name, thickness, plus, minus) => {
    const found = shop.materials.get(name)?.thickness;
    expect([found?.value, found?.tolerance?.plus, found?.tolerance?.minus].map((length) => exactly(length))).toEqual([
      thickness,
      plus,
      minus,
    ]);
  });

  // popularwoodworking.com, "plywood thickness tester": hardwood plywood to HP-1 is never thicker than it is sold by,
  // and up to 3/64 in thinner.
  test('hardwood plywood in inches is up to 3/64 in thinner and never thicker', () => {
    const found = shop.materials.get('plywood34in')?.thickness;
    expect(
      [found?.value, found?.tolerance?.plus, found?.tolerance?.minus].map((length) => exactly(length, 'in')),
    ).toEqual(['3/4', '0', '3/64']);
  });

  // Makers' data: MDF to EN 324 ± 0.2 mm, particleboard to EN 312 ± 0.3 mm.
  test.each([
    ['mdf18', '0.2'],
    ['particleboard18', '0.3'],
  ])('%s ± %s', (name, off) => {
    const found = shop.materials.get(name)?.thickness.tolerance;
    expect([exactly(found?.plus), exactly(found?.minus)]).toEqual([off, off]);
  });
});

test('every entry of the library says where its figures come from', () => {
  const entries: Stock[] = [shop.materials, shop.bands, shop.machines, shop.connectors].flatMap((map) => [
    ...(map as ReadonlyMap<string, Stock>).values(),
  ]);
  expect(entries.length).toBeGreaterThan(30);
  expect(entries.filter(({ provenance }) => !provenance).map(({ name }) => name)).toEqual([]);
});

test.each(['biscuit20', 'tenon8x40', 'dowel8x30'])('the hover of %s says what is from memory', async (name) => {
  const [markdown] = await hoverIn(text(name), `connect |${name}`);
  expect(markdown).toMatch(/from memory/);
});
