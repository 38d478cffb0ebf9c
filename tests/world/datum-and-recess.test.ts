import { describe, expect, test } from 'vitest';
import { oneShelf } from '../support/fixture-shop.js';
import { exactly, halfOf, marksOf, partOf, sizeOf } from '../support/look.js';
import { fitText } from '../support/read.js';

// Popular Woodworking no. 133 (April 2003) p. 85: where a panel is set back 1/4 in from the other part, the fence is
// raised by exactly 1/4 in to mill that other part.
describe('a recessed panel, Popular Woodworking no. 133 p. 85', () => {
  const recessed = (setBack: string) =>
    oneShelf({ base: '9mm', facts: `top set back ${setBack} from lh  flush front, rear` });

  test.each([
    ['1/4"', '1/4'],
    ['1/2"', '1/2'],
  ])('set back %s, the sides are milled %s in farther in than the panel', async (setBack, more) => {
    const result = await fitText(recessed(setBack));
    const own = halfOf(result, 'shelf / lh', 'shelf');
    const side = halfOf(result, 'shelf / lh', 'lh');
    expect(exactly(side.across.sub(own.across), 'in')).toBe(more);
    expect(exactly(side.stop?.at, 'in')).toBe(more);
    expect(side.stop?.end).toBe('top');
  });

  test('a slot 9 from the face of a panel set back 3 lies 12 from the end of the side', async () => {
    const result = await fitText(recessed('3mm'));
    expect(exactly(halfOf(result, 'shelf / lh', 'shelf').across)).toBe('9');
    expect(exactly(halfOf(result, 'shelf / lh', 'lh').across)).toBe('12');
  });
});

// Common practice, no source; the arithmetic is exact: slots measured from the face that the joint places lie where
// they should whatever the sheet measures, slots in the middle of the thickness do not.
describe('the datum face of a shelf whose underside is at 300', () => {
  test.each(['17.4', '17.6', '18', '18.5'])('%s thick: 9 above the underside is 309 up the side', async (measured) => {
    const result = await fitText(oneShelf({ thickness: '18', measured, base: '9' }));
    expect(exactly(halfOf(result, 'shelf / lh', 'lh').across)).toBe('309');
    expect(exactly(halfOf(result, 'shelf / lh', 'shelf').across)).toBe('9');
  });

  test('in the middle of a 17.6 mm board it is 308.8, 0.2 below a mark made for 18', async () => {
    const facts = 'bottom 300 above lh.bottom  flush front, rear  centred in thickness';
    const across = async (measured: string) =>
      halfOf(await fitText(oneShelf({ thickness: '18', measured, facts })), 'shelf / lh', 'lh').across;
    expect(exactly(await across('17.6'))).toBe('308.8');
    expect(exactly((await across('18')).sub(await across('17.6')))).toBe('0.2');
  });
});

// Common practice, no source.
describe('what the bench sets up', () => {
  test('the spacer is as wide as the shelf is short by at the rear, and only there', async () => {
    for (const [rear, front] of [
      ['22', '0'],
      ['22', '30'],
      ['0', '30'],
    ]) {
      const facts = `bottom 300 above lh.bottom  rear set back ${rear} from lh  front set back ${front} from lh`;
      const result = await fitText(oneShelf({ facts }));
      const shelf = halfOf(result, 'shelf / lh', 'shelf');
      expect(exactly(shelf.spacer.width)).toBe(rear);
      expect(exactly(halfOf(result, 'shelf / lh', 'lh').spacer.width)).toBe('0');
      expect(marksOf(shelf)).toEqual(['70', '180', '270'].map((mark) => String(Number(mark) - Number(rear))));
    }
  });

  test('the stop stands at the height of the underside of the shelf', async () => {
    for (const height of ['0', '300', '481.3']) {
      const result = await fitText(oneShelf({ facts: `bottom ${height} above lh.bottom  flush front, rear` }));
      const { stop } = halfOf(result, 'shelf / rh', 'rh');
      expect([stop?.end, exactly(stop?.at)]).toEqual(['bottom', height]);
    }
  });

  test('from the top end when the upper face is the reference', async () => {
    const facts = 'bottom 300 above lh.bottom  flush front, rear  reference top';
    const { stop, across } = halfOf(await fitText(oneShelf({ facts })), 'shelf / rh', 'rh');
    expect([stop?.end, exactly(stop?.at), exactly(across)]).toEqual(['top', '382', '391']);
  });

  test('the packer is as thick as the piece', async () => {
    const jig = 'jig bed { bed 900mm  fences left, right  stop 0mm to 800mm  hold beam }';
    for (const measured of ['17.4', '18.1']) {
      const result = await fitText(oneShelf({ thickness: '18', measured, more: jig }));
      expect(exactly(halfOf(result, 'shelf / lh', 'shelf').packer)).toBe(exactly(partOf(result, 'shelf').extent.z));
      expect(exactly(halfOf(result, 'shelf / lh', 'lh').packer)).toBe(measured);
    }
  });

  test('depths are measured from the datum edge, whatever lies beyond it', async () => {
    // The back of the cabinet stands 40 behind the sides: y of the frame begins elsewhere, the marks do not move.
    const text = oneShelf().replace(
      'connect plate by row',
      `connect plate by row
  part rail : facing of board
  height 90 of rail
  butt rail to lh.rear { left flush with lh  bottom flush with lh  reference left  connect none "for the figure" }
  width 600 of rail`,
    );
    const plain = await fitText(oneShelf());
    const railed = await fitText(text);
    expect(sizeOf(railed, 'rail')).toBe('600 x 18 x 90');
    for (const part of ['shelf', 'lh']) {
      expect(marksOf(halfOf(railed, 'shelf / lh', part))).toEqual(marksOf(halfOf(plain, 'shelf / lh', part)));
      expect(halfOf(railed, 'shelf / lh', part).setback.toString()).toBe('0');
    }
  });
});
