import { render } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../../testing/files.fixture.js';

const CABINET = 'cabinet Shelf {\n  part board : level of ply\n}\nmaterial ply { thickness 18 }\n';

async function read(settings: string, units = 'mm') {
  const text = `units ${units}\n${CABINET}${settings}`;
  const { cabinets, findings } = await new FilesInMemory({ 'a.joinery': text }).examine('a.joinery');
  const told = findings.map(({ code, message }) => `${code}: ${render(message, { units: 'mm' })}`);
  return { tolerances: cabinets[0]?.spec.shop.tolerances, told };
}

describe('the tolerances of a shop', () => {
  test('are read either way, one way, over a length and in degrees, in the units of the file', async () => {
    const { tolerances } = await read(
      'tolerances { saw plus 1/64 minus 1/32  square 1/64 over 40  mitre ± 0.1 degrees  line +/- 0.2mm  dirt 0.05mm  reckon worst case }',
      'in',
    );
    expect(tolerances?.saw?.tolerance?.plus.toString()).toBe('127/320');
    expect(tolerances?.saw?.tolerance?.minus.toString()).toBe('127/160');
    expect(tolerances?.square?.over.toString()).toBe('1016');
    expect(tolerances?.mitre?.degrees.toString()).toBe('1/10');
    expect(tolerances?.line?.tolerance?.minus.toString()).toBe('1/5');
    expect(tolerances?.dirt?.most.toString()).toBe('1/20');
    expect([tolerances?.stop, tolerances?.cup, tolerances?.reckon]).toEqual([undefined, undefined, 'worst case']);
  });

  test('are nothing where none are written, and are reckoned by root sum square unless said', async () => {
    expect((await read('')).tolerances).toBeUndefined();
    expect((await read('tolerances { saw ± 0.1 }')).tolerances?.reckon).toBe('root sum square');
  });

  test.each([
    ['tolerances { saw ± 0.1  saw ± 0.2 }', /written-twice: saw is written twice/],
    ['tolerances { saw ± 0.1 }\ntolerances { stop ± 0.1 }', /duplicate-name: a file describes one tolerances/],
    ['tolerances { square 10 over 5 }', /setting-wrong: the end of a piece cannot be 10 out of square over 5/],
    ['tolerances { mitre ± 30 degrees }', /setting-wrong: the bevel of a mitre is off by a few degrees/],
    ['tolerances { mitre ± 1mm degrees }', /setting-wrong: the bevel of a mitre is off by a few degrees/],
    ['tolerances { dirt 0 - 1 }', /setting-wrong: the dirt of the tolerances cannot be below 0/],
    ['tolerances { saw plus 0.1 minus (0 - 0.1) }', /setting-wrong: a tolerance says how far/],
    ['tolerances { saws ± 0.1 }', /syntax: .*none of the tolerances, which are `saw`, `square`/],
    ['tolerances { reckon badly }', /syntax: expected `worst case` or `root sum square`/],
  ])('that make no sense are told: %s', async (settings, message) => {
    expect((await read(settings)).told.join('\n')).toMatch(message);
  });
});
