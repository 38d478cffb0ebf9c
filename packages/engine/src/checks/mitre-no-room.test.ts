import { describe, expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import { across, connect, flush, outer, reference } from '../testing/joint-items.js';
import { connector, lines, machine, material, shop } from '../testing/shop-builder.js';
import { cabinet } from '../testing/spec-builder.js';
import { mitreNoRoom } from './mitre-no-room.js';

/** Mitred plinth, skin 3 and wall 3, a disc of 100 and kerf 4 whose base may be off by `off`. */
function mitred(sheet: string, plunge: string, from: 'outer' | 'inner', distance: string, off = '0') {
  const stock = shop({
    materials: [material('sheet', sheet)],
    machines: [machine('disc', 'disc', { diameter: 100, kerf: 4, base: '9.5', tolerance: off })],
    connectors: [connector('plate', 'biscuit', { along: 40, across: 15, thickness: 4, face: plunge, machine: 'disc' })],
    limits: { skin: 3, wall: 3 },
  });
  return foundBy(
    mitreNoRoom,
    cabinet(stock)
      .part('lh, rh', 'upright', 'sheet')
      .part('top', 'level', 'sheet')
      .over('width', 420, 'lh', 'rh')
      .of('height', 900, 'lh, rh')
      .of('depth', 420, 'lh, rh')
      .joint(
        'mitre',
        'top',
        'between lh and rh',
        outer('top'),
        flush('rear', 'front'),
        reference(from),
        across(distance),
        connect('plate', lines(70, 350)),
      )
      .build(),
  );
}

// From the triangle of the mitre: 18.54…20.46 in 18 at 12.3, 18.54…19.75 in 17.5, 14.24…17.63 in 16 at 8.
describe('where a slot may lie on a mitre', () => {
  it.each([
    ['18', '12.3', '18.543', '20.455'],
    ['18 ± 0.5', '12.3', '18.543', '19.748'],
    ['16', '8', '14.243', '17.627'],
  ])('%s at %s: from %s to %s', (sheet, plunge, from, to) => {
    const beside = (text: string, by: number) => (Number(text) + by).toFixed(3);
    for (const inside of [from, to]) expect(mitred(sheet, plunge, 'outer', inside)).toEqual([]);
    for (const outside of [beside(from, -0.001), beside(to, 0.001)]) {
      expect(mitred(sheet, plunge, 'outer', outside).map(({ severity }) => severity)).toEqual(['error']);
    }
  });

  it.each([
    ['16', '12.3', '11.38'],
    ['12', '8', '5.72'],
  ])('nowhere in %s at %s; it says what plunge would do', (sheet, plunge, most) => {
    const [found] = mitred(sheet, plunge, 'outer', '12');
    expect(found && words(found.message)).toContain(
      'no place on this mitre leaves 3 under the outer face and 3 at the heel',
    );
    expect(found && words(found.cure)).toContain(`no deeper than ${most}`);
  });

  it('counts from the heel where the joint is measured from there', () => {
    // 18·√2 − 18.543 is 6.913.
    expect(mitred('18', '12.3', 'inner', '6.912')).toEqual([]);
    const [found] = mitred('18', '12.3', 'inner', '6.914');
    expect(found?.severity).toBe('error');
    expect(found && words(found.cure)).toContain('from the heel: at 6 from reference');
  });

  it('warns where the machine may be off by more than there is room', () => {
    expect(mitred('18', '12.3', 'outer', '19.5', '0.9')).toEqual([]);
    expect(mitred('18', '12.3', 'outer', '19.5', '1').map(({ severity }) => severity)).toEqual(['warning']);
  });
});
