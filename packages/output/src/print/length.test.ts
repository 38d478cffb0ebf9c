import { INCH, Rational, say } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { printLength, printLost, printText } from './length.js';

const inches = (whole: number, n: number, d: number) => INCH.mul(Rational.of(whole * d + n, d));

describe('a printed length', () => {
  it('shows nothing lost where nothing is', () => {
    expect(printLength(Rational.of(5646, 10), { units: 'mm' })).toBe('564.6');
    expect(printLength(inches(23, 1, 64), { units: 'in' })).toBe('23 1/64');
  });

  it('shows what rounding to a fraction of an inch took away, longer by a plus', () => {
    const length = inches(23, 1, 64).add(Rational.of(13, 100));
    expect(printLength(length, { units: 'in', denominator: 64 })).toBe('23 1/64 (+0.13 mm lost)');
    expect(printLength(length, { units: 'in', denominator: 64 }, 'table')).toBe('23 1/64 (+0.13 mm)');
  });

  it('marks a millimetre that is rounded', () => {
    expect(printLength(Rational.of(346, 3), { units: 'mm' })).toBe('≈115.33');
  });

  it('prints what is irrational to its nearest place', () => {
    expect(printLength({ value: 65.68744, error: 1e-9 }, { units: 'mm' })).toBe('65.69');
  });

  it.each([
    [Rational.of(-1, 4), '-0.25 mm'],
    [Rational.of(3, 1000), '+0.003 mm'],
    [Rational.of(1, 100_000_000), 'under 0.0001 mm'],
  ])('tells a small loss from none', (lost, words) => {
    expect(printLost(lost)).toBe(words);
  });

  it('renders a message in the units asked for', () => {
    const message = say`it leaves ${Rational.of(18)}`;
    expect(printText(message, { units: 'mm' })).toBe('it leaves 18');
    expect(printText(message, { units: 'in', denominator: 64 })).toBe('it leaves 45/64 (+0.14 mm lost)');
  });
});
