import { INCH, Rational } from '@dryfit/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MILLIMETRES, readNumber } from '../../parser/numbers.js';
import { decent, lengthIn, writtenAs, writtenLike } from './figures.js';

const length = fc
  .tuple(fc.integer({ min: 1, max: 1_000_000 }), fc.constantFrom(1, 3, 5, 7, 10, 64, 127, 640))
  .map(([n, d]) => Rational.of(n, d));

test('what is written reads back as the very length, in any file', () => {
  fc.assert(
    fc.property(length, fc.constantFrom('mm' as const, 'in' as const), (value, unit) => {
      const { value: read, unit: own } = readNumber(writtenAs(value, unit));
      expect(read?.mul(MILLIMETRES[own ?? unit]).toString()).toBe(value.toString());
    }),
  );
});

test.each([
  ['563.9', '16', 'mm', '563.9'],
  ['596.9', '16', 'in', '23 1/2'],
  ['412.6', '16', 'in', '412.6 mm'],
  ['19.05', '1/2"', 'mm', '3/4"'],
  ['21.8', '22mm', 'in', '21.8mm'],
] as const)('%s mm in the place of %s in a file of %s is %s', (mm, before, unit, wanted) => {
  expect(writtenLike(Rational.parse(mm) ?? Rational.ZERO, before, unit)).toBe(wanted);
});

test('a decent figure lies on the side asked for, and no further than a step', () => {
  fc.assert(
    fc.property(length, fc.constantFrom('mm' as const, 'in' as const), (value, unit) => {
      const step = unit === 'in' ? INCH.div(Rational.of(16)) : Rational.ONE;
      const [more, less] = [decent(value, unit, 'more'), decent(value, unit, 'less')];
      expect(more.ge(value) && more.sub(value).lt(step)).toBe(true);
      expect(less.le(value) && value.sub(less).lt(step)).toBe(true);
    }),
  );
});

test('lengths of a finding’s data', () => {
  expect([lengthIn('-7/2')?.toNumber(), lengthIn('12')?.toNumber(), lengthIn('lh'), lengthIn(['1'])]).toEqual([
    -3.5,
    12,
    undefined,
    undefined,
  ]);
});
