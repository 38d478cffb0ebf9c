import { describe, expect, test } from 'vitest';
import { oneShelf } from '../support/fixture-shop.js';
import { codesOf } from '../support/look.js';
import { fitText } from '../support/read.js';

// Arithmetic of t − p, with the trade's plunges (from memory) of 8, 10 and 12.3 mm for #0, #10 and #20 and sheets of
// the trade's thicknesses; 23/32 in is what is sold as 3/4 in.
describe('what a slot leaves under it in a face', () => {
  test.each([
    ['18mm', '8mm', '10mm'],
    ['18mm', '10mm', '8mm'],
    ['18mm', '12.3mm', '5.7mm'],
    ['16mm', '12.3mm', '3.7mm'],
    ['15mm', '12.3mm', '2.7mm'],
    ['12mm', '8mm', '4mm'],
    ['12mm', '10mm', '2mm'],
    ['23/32"', '12.3mm', '5.95625mm'],
  ])('%s sheet, plunge %s: exactly %s is let pass and a thousandth more is not', async (thickness, plunge, left) => {
    const wishes = { thickness, plunge, across: '15mm', along: '47mm', wall: '1mm', base: '6mm' };
    const passes = await fitText(oneShelf({ ...wishes, skin: left }));
    expect(codesOf(passes.findings)).toEqual([]);
    const fails = await fitText(oneShelf({ ...wishes, skin: `${left} + 0.001mm` }));
    expect(codesOf(fails.findings)).toEqual(['slot-breaks-through']);
  });

  test('a #20 comes 0.3 mm out of the other face of a 12 mm sheet', async () => {
    const result = await fitText(oneShelf({ thickness: '12mm', wall: '1mm', base: '6mm', skin: '0mm' }));
    expect(codesOf(result.findings)).toEqual(['slot-breaks-through']);
    const figures = result.findings.flatMap((finding) => finding.message.map(String));
    expect(figures).toContain('3/10');
  });
});

// Popular Woodworking no. 160 (February 2007) p. 53: a biscuit tried both ways round in its slot should leave pencil
// lines 3/32 to 1/8 in apart. With slots p deep and a biscuit w wide the gap is 2·p − w (plane geometry), so a #20 of
// 23 mm wants a plunge of 12.69 to 13.09 mm.
describe('depth of a pair of slots, Popular Woodworking no. 160 p. 53', () => {
  test.each([
    ['23/2 mm + 3/64"', '3/32"', false],
    ['23/2 mm + 3/64" - 0.001 mm', '3/32"', true],
    ['23/2 mm + 1/16"', '1/8"', false],
    ['23/2 mm + 1/16" - 0.001 mm', '1/8"', true],
  ])('plunge %s with room %s for glue: the joint bottoms out: %s', async (plunge, clearance, bottoms) => {
    const result = await fitText(oneShelf({ plunge, connector: `clearance ${clearance}` }));
    expect(codesOf(result.findings)).toEqual(bottoms ? ['joint-bottoms-out'] : []);
  });
});
