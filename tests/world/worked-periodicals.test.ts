import type { FitResult } from '@dryfit/engine';
import { beforeAll, describe, expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { codesOf, exactly, halfOf, marksOf, sizeOf } from '../support/look.js';
import { examineExample, fitExample } from '../support/read.js';

// Every figure here was worked by hand from the example's statements: sheet 17.7 measured, back 5.8 in a groove 6 wide
// and 8 deep with 0.5 of room, set back 16.
describe('the periodicals base, 600 wide, 720 high, 560 deep, worked by hand', () => {
  let result: FitResult;
  beforeAll(async () => {
    result = await fitExample('periodicals.joinery', 'Periodicals', { wide: 600 });
  });

  test.each([
    ['lh', '17.7 x 560 x 720'],
    ['rh', '17.7 x 560 x 720'],
    ['top', '564.6 x 560 x 17.7'],
    ['base', '564.6 x 560 x 17.7'],
    ['shelf', '564.6 x 538 x 17.7'],
    ['back', '579.6 x 5.8 x 699.6'],
  ])('%s is %s', (part, size) => {
    expect(sizeOf(result, part)).toBe(size);
  });

  test('the shelf is 22 short at the rear: spacers 10 and 12', () => {
    const { spacer } = halfOf(result, 'shelf / lh', 'shelf');
    expect(exactly(spacer.width)).toBe('22');
    expect(spacer.stack.map((piece) => exactly(piece)).sort()).toEqual(['10', '12']);
    expect([spacer.kind, exactly(spacer.off), exactly(spacer.tolerance.plus)]).toEqual(['stock', '0', '0']);
  });

  test.each(['lh', 'rh'])('shelf slots are 48 to 478 from its own rear edge, 70 to 500 from the rear of %s', (side) => {
    const shelf = halfOf(result, `shelf / ${side}`, 'shelf');
    expect(marksOf(shelf)).toEqual(['48', '158', '248', '398', '478']);
    expect([shelf.from.kind, shelf.from.side, exactly(shelf.across)]).toEqual(['face', 'bottom', '9.5']);
    const half = halfOf(result, `shelf / ${side}`, side);
    expect(marksOf(half)).toEqual(['70', '180', '270', '420', '500']);
    expect([half.from.kind, half.from.side, exactly(half.across)]).toEqual(['end', 'bottom', '359.5']);
    expect([half.stop?.end, exactly(half.stop?.at)]).toEqual(['bottom', '350']);
    expect(half.datum).toBe('rear');
  });

  test('a slot is 65.69 long and leaves 15.16 to the rear edge of the shelf', () => {
    const slot = halfOf(result, 'shelf / lh', 'shelf').slots[0];
    expect(slot?.length.value).toBeCloseTo(65.69, 2);
    expect((slot?.fromDatum.toNumber() ?? 0) - (slot?.length.value ?? 0) / 2).toBeCloseTo(15.16, 2);
  });

  test('it can be made', () => {
    expect(codesOf(result.findings)).toEqual([]);
  });

  test('a batch of back that measures 5.6 or 6 moves nothing but the back', async () => {
    for (const measured of ['5.6', '6']) {
      const shop = exampleText('shop.joinery').replace('measured 5.8 ± 0.1', `measured ${measured}`);
      const other = await fitExample('periodicals.joinery', 'Periodicals', { wide: 600 }, { 'shop.joinery': shop });
      expect(sizeOf(other, 'shelf')).toBe('564.6 x 538 x 17.7');
      expect(exactly(halfOf(other, 'shelf / lh', 'shelf').spacer.width)).toBe('22');
      expect(sizeOf(other, 'back')).toBe(`579.6 x ${measured} x 699.6`);
    }
  });
});

describe('the same 450 wide and 320 deep, worked by hand', () => {
  test('sizes follow, and only the lines that lie on it are used', async () => {
    const result = await fitExample('periodicals.joinery', 'Periodicals', { wide: 450, deep: 320 });
    expect(sizeOf(result, 'shelf')).toBe('414.6 x 298 x 17.7');
    expect(sizeOf(result, 'top')).toBe('414.6 x 320 x 17.7');
    expect(marksOf(halfOf(result, 'shelf / lh', 'lh'))).toEqual(['70', '180', '270']);
    expect(marksOf(halfOf(result, 'shelf / lh', 'shelf'))).toEqual(['48', '158', '248']);
    expect(exactly(halfOf(result, 'shelf / lh', 'shelf').spacer.width)).toBe('22');
    expect(codesOf(result.findings)).toEqual([]);
  });

  test('a line at 300 breaks out of the front by 12.84', async () => {
    const shop = exampleText('shop.joinery').replace('lines 70, 180, 270, 420, 500', 'lines 70, 180, 300');
    const { findings } = await fitExample(
      'periodicals.joinery',
      'Periodicals',
      { wide: 450, deep: 320 },
      { 'shop.joinery': shop },
    );
    expect(codesOf(findings)).toContain('slot-near-edge');
    const off = findings.filter(({ about }) => about.slots?.some((slot) => slot.startsWith('top / lh top')));
    const figures = off
      .flatMap(({ message }) => message)
      .filter((piece) => typeof piece === 'object' && 'value' in piece);
    // 300 + 65.69/2 − 320.
    expect(
      figures.some((piece) => typeof piece === 'object' && 'value' in piece && Math.abs(piece.value - 12.84) < 0.005),
    ).toBe(true);
  });
});

describe('the same with a first line at 60 and the shelf against the back itself, worked by hand', () => {
  const changed = {
    'shop.joinery': exampleText('shop.joinery').replace('lines 70, 180', 'lines 60, 180'),
    'periodicals.joinery': exampleText('periodicals.joinery').replace(
      'against back.groove.front',
      'against back.front',
    ),
  };

  test('the spacer is 21.8, which 6, 10, 12, 19 and 25 cannot make within 0.2 for a back of 5.8 ± 0.1', async () => {
    const result = await fitExample('periodicals.joinery', 'Periodicals', { wide: 600 }, changed);
    const { spacer } = halfOf(result, 'shelf / lh', 'shelf');
    expect([exactly(spacer.width), spacer.kind]).toEqual(['21.8', 'missing']);
    expect(codesOf(result.findings)).toContain('spacer-not-in-stock');
  });

  test('the first slot of the shelf is 38.2 from its rear and leaves 5.36, though that of the side is fine', async () => {
    const { findings, ...result } = await fitExample('periodicals.joinery', 'Periodicals', { wide: 600 }, changed);
    expect(marksOf(halfOf({ findings, ...result }, 'shelf / lh', 'shelf'))[0]).toBe('38.2');
    const near = findings.filter(({ code }) => code === 'slot-near-edge');
    expect([...new Set(near.flatMap(({ about }) => about.parts))]).toEqual(['shelf']);
    const left = near
      .flatMap(({ message }) => message)
      .filter((piece) => typeof piece === 'object' && 'value' in piece);
    expect(
      left.some((piece) => typeof piece === 'object' && 'value' in piece && Math.abs(piece.value - 5.36) < 0.005),
    ).toBe(true);
  });

  test('the file as a whole says so too', async () => {
    const { findings } = await examineExample('periodicals.joinery', changed);
    expect(codesOf(findings)).toEqual(expect.arrayContaining(['slot-near-edge', 'spacer-not-in-stock']));
  });
});
