import { INCH, Rational } from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readNumber, readWhole } from './numbers.js';

describe('numbers as they are written', () => {
  test.each([
    ['18', '18', undefined],
    ['17.7', '177/10', undefined],
    ['18mm', '18', 'mm'],
    ['18 mm', '18', 'mm'],
    ['3/4"', '3/4', 'in'],
    ['3/4″', '3/4', 'in'],
    ['23 1/4 in', '93/4', 'in'],
    ['23 1/4"', '93/4', 'in'],
    ['4in', '4', 'in'],
    ['0.1', '1/10', undefined],
  ])('%s', (text, value, unit) => {
    const read = readNumber(text);
    expect(`${read.value}`).toBe(value);
    expect(read.unit).toBe(unit);
    expect(read.unhyphened).toBeUndefined();
  });

  test('a hyphen between a whole number and its fraction is read as the joiner means it', () => {
    const read = readNumber('23-1/4"');
    expect(`${read.value}`).toBe('93/4');
    expect(read.unhyphened).toBe('23 1/4"');
  });

  test('a fraction over nothing has no value', () => {
    expect(readNumber('1/0').value).toBeUndefined();
  });

  test('every decimal is read exactly, never through a float', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 20n }), fc.integer({ min: 1, max: 12 }), (digits, places) => {
        const text = `${digits}`.padStart(places + 1, '0');
        const written = `${text.slice(0, -places)}.${text.slice(-places)}`;
        expect(readNumber(written).value?.equals(Rational.of(digits, 10n ** BigInt(places)))).toBe(true);
      }),
    );
  });

  test('an inch is 25.4 mm exactly (NBS Circular 572 addendum, 1960)', () => {
    expect(INCH.equals(Rational.of(254, 10))).toBe(true);
  });
});

test('whole numbers', () => {
  expect(readWhole('12')).toBe(12);
  for (const text of ['1.5', '3mm', '-1', '1/2', '', undefined]) expect(readWhole(text)).toBeUndefined();
});
