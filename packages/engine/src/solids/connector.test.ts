import { describe, expect, it } from 'vitest';
import { connector, machine } from '../testing/shop-builder.js';
import { mm } from '../testing/written.js';
import { bindingOf } from './connector.js';

const joiner = machine('joiner', 'disc', { diameter: 100, kerf: 4, base: 9 });
const mortiser = machine('mortiser', 'mortiser', { diameter: 8, base: 9 });
const both = (depth: string) => [mm(depth), mm(depth)];

describe('a connector in its two slots', () => {
  it('binds on the arc where its ends are wider than the slots are deep there', () => {
    // Worked on paper: at 20 from the middle each slot of 12.3 is √(50² − 20²) + 12.3 − 50 = 8.1258 deep.
    const slip = (across: string) =>
      connector('slip', 'loose tenon', { along: 40, across, thickness: 4, slot: 40, face: '12.3', machine: 'joiner' });
    const binding = bindingOf(slip('18'), joiner, both('12.3'));
    expect(binding?.kind).toBe('on the arc');
    expect(binding?.short.value).toBeCloseTo(18 - 2 * 8.12576, 4);
    expect(bindingOf(slip('16.2515'), joiner, both('12.3'))).toBeUndefined();
    expect(bindingOf(slip('16.2516'), joiner, both('12.3'))?.kind).toBe('on the arc');
  });

  it('counts the room for glue', () => {
    const slip = connector('slip', 'loose tenon', {
      along: 40,
      across: 16,
      thickness: 4,
      slot: 40,
      clearance: 1,
      face: '12.3',
      machine: 'joiner',
    });
    expect(bindingOf(slip, joiner, both('12.3'))?.short.value).toBeCloseTo(17 - 2 * 8.12576, 4);
  });

  it('does not bind where a biscuit is as round as its cutter', () => {
    const plate = connector('plate', 'biscuit', {
      along: 56,
      across: 23,
      thickness: 4,
      face: '12.3',
      machine: 'joiner',
    });
    expect(bindingOf(plate, joiner, both('12.3'))).toBeUndefined();
    expect(bindingOf(plate, joiner, both('11.5'))).toBeUndefined();
  });

  it('binds at the square corners of a biscuit in a slot with round ends', () => {
    const plate = (slot: string) =>
      connector('plate', 'biscuit', { along: 56, across: 23, thickness: 4, slot, face: 12, machine: 'mortiser' });
    // Corners 4 beyond the middle of an end of radius 4, and 2 to the side: √(4² + 2²) − 4 = 0.4721 in the wood.
    const binding = bindingOf(plate('56'), mortiser, both('12'));
    expect(binding?.short.value).toBeCloseTo(Math.sqrt(20) - 4, 9);
    // Long enough once the corners lie on the round: 56 + 8 − 2·√(4² − 2²).
    expect(binding?.kind === 'at the corners' ? binding.length.value : 0).toBeCloseTo(64 - 2 * Math.sqrt(12), 9);
    expect(bindingOf(plate('57.072'), mortiser, both('12'))).toBeUndefined();
    expect(bindingOf(plate('57.071'), mortiser, both('12'))?.kind).toBe('at the corners');
  });

  it('leaves tenons in mortises and dowels in holes alone', () => {
    const tenon = connector('tenon', 'loose tenon', {
      along: 23,
      across: 40,
      thickness: 8,
      slot: 23,
      face: 20,
      machine: 'mortiser',
    });
    expect(bindingOf(tenon, mortiser, both('20'))).toBeUndefined();
  });
});
