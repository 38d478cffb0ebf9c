import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatInch, formatLength, formatMm, INCH } from './format.js';
import { Rational } from './rational.js';

const r = (text: string) => Rational.parse(text) as Rational;
const inches = (text: string) => r(text).mul(INCH);
const decimal = (x: Rational) => formatMm(x, { decimals: 9 }).text;

describe('lengths in millimetres', () => {
  it('are rounded half up in magnitude, without trailing zeros', () => {
    const mm = (text: string, decimals?: number) => formatMm(r(text), { decimals }).text;
    expect(mm('564.6')).toBe('564.6');
    expect(mm('560')).toBe('560');
    expect(mm('0.005')).toBe('0.01');
    expect(mm('-0.005')).toBe('-0.01');
    expect(mm('0.0049')).toBe('0');
    expect(mm('-0.0049')).toBe('0');
    expect(mm('1/3')).toBe('0.33');
    expect(mm('-1/3')).toBe('-0.33');
    expect(mm('2/3', 0)).toBe('1');
    expect(mm('1/2', 0)).toBe('1');
    expect(mm('563.99999')).toBe('564');
    expect(mm('100', 0)).toBe('100');
    expect(mm('15.160', 3)).toBe('15.16');
    expect(() => formatMm(Rational.ONE, { decimals: -1 })).toThrow(RangeError);
    expect(() => formatMm(Rational.ONE, { decimals: 1.5 })).toThrow(RangeError);
  });

  it('say what printing left out', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 1, max: 5000 }), fc.nat(6), (n, d, decimals) => {
        const exact = Rational.of(n, d);
        const { text, lost } = formatMm(exact, { decimals });
        expect(r(text).add(lost)).toStrictEqual(exact);
        expect(
          lost
            .abs()
            .mul(Rational.of(2 * 10 ** decimals))
            .le(Rational.ONE),
        ).toBe(true);
        expect(text).toMatch(/^(0|-?(0|[1-9]\d*)(\.\d*[1-9])?)$/);
        expect(formatMm(exact.neg(), { decimals }).text.replace('-', '')).toBe(text.replace('-', ''));
      }),
    );
  });
});

// 1 yd = 0.9144 m exactly (yard and pound agreement of 1959; NBS Circular 572, addendum), hence 1 in = 25.4 mm;
// the rest is exact arithmetic.
describe('inches, exact since the yard and pound agreement of 1959', () => {
  it('are 25.4 mm', () => {
    expect(INCH.mul(Rational.of(36))).toStrictEqual(r('914.4'));
    expect(decimal(inches('23/32'))).toBe('18.25625');
    expect(decimal(inches('3/4'))).toBe('19.05');
    expect(decimal(inches('0.703'))).toBe('17.8562');
  });

  it.each([
    ['18', 32, '23/32', '0.25625'],
    ['18', 64, '45/64', '-0.140625'],
  ])('round %s mm to 1/%s as %s, off by %s mm', (mm, denominator, text, off) => {
    const printed = formatInch(r(mm), { denominator });
    expect(printed.text).toBe(text);
    expect(decimal(printed.lost.neg())).toBe(off);
  });

  it('add up what rounding does to ten holes at 32 mm', () => {
    const ten = (text: string) => decimal(inches(text).sub(r('32')).mul(Rational.of(9)));
    expect(ten('1 1/4')).toBe('-2.25');
    expect(ten('1 17/64')).toBe('1.321875');
  });

  it('keep sums of fractions exact', () => {
    const sum = inches('7 3/16').add(inches('3 5/32')).sub(inches('23/32'));
    expect(formatInch(sum)).toEqual({ text: '9 5/8', lost: Rational.ZERO });
  });

  it('print whole numbers, fractions, both, and their negatives', () => {
    const inch = (text: string, denominator?: number) => formatInch(inches(text), { denominator }).text;
    expect(inch('0')).toBe('0');
    expect(inch('23')).toBe('23');
    expect(inch('23 16/64')).toBe('23 1/4');
    expect(inch('-23 1/4')).toBe('-23 1/4');
    expect(inch('-1/4')).toBe('-1/4');
    expect(inch('1/128')).toBe('1/64');
    expect(inch('-1/128')).toBe('-1/64');
    expect(inch('-1/129')).toBe('0');
    expect(inch('127/128')).toBe('1');
    expect(inch('2/3', 3)).toBe('2/3');
    expect(inch('2/3', 1)).toBe('1');
    expect(() => formatInch(INCH, { denominator: 0 })).toThrow(RangeError);
    expect(() => formatInch(INCH, { denominator: 2.5 })).toThrow(RangeError);
  });

  it('say what printing left out', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: 1, max: 5000 }),
        fc.constantFrom(16, 32, 64, 10),
        (n, d, denominator) => {
          const exact = Rational.of(n, d);
          const { text, lost } = formatInch(exact, { denominator });
          expect(inches(text).add(lost)).toStrictEqual(exact);
          expect(lost.abs().le(INCH.div(Rational.of(2 * denominator)))).toBe(true);
        },
      ),
    );
  });
});

describe('lengths in the reader’s units', () => {
  it('carry the unit when asked', () => {
    const length = inches('23 1/4');
    expect(formatLength(length, { units: 'mm' }).text).toBe('590.55');
    expect(formatLength(length, { units: 'mm', unit: true, decimals: 1 })).toEqual({
      text: '590.6 mm',
      lost: r('-0.05'),
    });
    expect(formatLength(length, { units: 'in' }).text).toBe('23 1/4');
    expect(formatLength(length, { units: 'in', unit: true, denominator: 2 })).toEqual({
      text: '23 1/2"',
      lost: inches('-1/4'),
    });
  });
});
