import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { Rational } from './rational.js';

const integer = fc.oneof(
  fc.integer({ min: -1000, max: 1000 }).map(BigInt),
  fc.maxSafeInteger().map(BigInt),
  fc.bigInt({ min: -(2n ** 90n), max: 2n ** 90n }),
);
const pair = fc.tuple(
  integer,
  integer.filter((d) => d !== 0n),
);
const of = ([n, d]: [bigint, bigint]) => Rational.of(n, d);
const oracle = ([n, d]: [bigint, bigint]) => new Fraction(n, d);
const same = (r: Rational, f: Fraction) => expect(`${r}`).toBe(`${f.s * f.n}${f.d === 1n ? '' : `/${f.d}`}`);

describe('Rational', () => {
  it('is made of integers only', () => {
    expect(`${Rational.of(6, -4)}`).toBe('-3/2');
    expect(() => Rational.of(0.5)).toThrow(RangeError);
    expect(() => Rational.of(1, 0.5)).toThrow(RangeError);
    expect(() => Rational.of(Number.NaN)).toThrow(RangeError);
    expect(() => Rational.of(1, 0)).toThrow(RangeError);
    expect(() => Rational.of(2n ** 80n, 0n)).toThrow(RangeError);
    expect(() => Rational.ONE.div(Rational.ZERO)).toThrow(RangeError);
    expect(() => Rational.ZERO.inverse()).toThrow(RangeError);
  });

  it('reads numbers digit by digit', () => {
    const read = (text: string) => Rational.parse(text)?.toString();
    expect(read('18')).toBe('18');
    expect(read('17.7')).toBe('177/10');
    expect(read('0.123456789')).toBe('123456789/1000000000');
    expect(read('563.99999999999999999')).toBe('56399999999999999999/100000000000000000');
    expect(read('3/4')).toBe('3/4');
    expect(read(' 23 1/4 ')).toBe('93/4');
    expect(read('-23 1/4')).toBe('-93/4');
    expect(read('-0.5')).toBe('-1/2');
    for (const text of [
      '',
      '-',
      '.',
      '1.',
      '.5',
      '1e3',
      '3/0',
      '1.5/2',
      '1.5 1/2',
      '23-1/4',
      '1/2/3',
      '0x10',
      '1 2',
      '--1',
    ]) {
      expect(read(text), text).toBeUndefined();
    }
  });

  it('has equal structure for equal values, zero and huge ones too', () => {
    expect(Rational.of(5).mul(Rational.ZERO)).toStrictEqual(Rational.of(-0));
    expect(Rational.of(5).mul(Rational.ZERO).neg()).toStrictEqual(Rational.ZERO);
    expect(Rational.of(0, -7)).toStrictEqual(Rational.ZERO);
    const huge = Rational.of(2n ** 80n);
    expect(huge.div(huge)).toStrictEqual(Rational.ONE);
    expect(huge.add(Rational.ONE).sub(huge)).toStrictEqual(Rational.ONE);
    expect(huge.equals(Rational.ZERO)).toBe(false);
    expect(Rational.ZERO.equals(huge)).toBe(false);
    expect(huge.isZero()).toBe(false);
  });

  it('agrees with an independent library on arithmetic and order', () => {
    fc.assert(
      fc.property(pair, pair, (a, b) => {
        const [x, y, p, q] = [of(a), of(b), oracle(a), oracle(b)];
        same(x.add(y), p.add(q));
        same(x.sub(y), p.sub(q));
        same(x.mul(y), p.mul(q));
        if (!y.isZero()) same(x.div(y), p.div(q));
        same(x.neg(), p.neg());
        same(x.abs(), p.abs());
        same(x.floor(), p.floor());
        same(x.ceil(), p.ceil());
        const order = Math.sign(p.compare(q));
        expect(x.compare(y)).toBe(order === 0 ? 0 : order);
        expect([x.lt(y), x.le(y), x.equals(y), x.ge(y), x.gt(y)]).toEqual([
          order < 0,
          order <= 0,
          order === 0,
          order >= 0,
          order > 0,
        ]);
        expect(x.sign()).toBe(p.n === 0n ? 0 : Number(p.s));
        expect(Rational.min(x, y).le(Rational.max(x, y))).toBe(true);
        expect([x.numerator, x.denominator]).toEqual([p.s * p.n, p.d]);
        expect(x.isInteger()).toBe(p.d === 1n);
      }),
    );
  });

  it('reads back what it prints, in JSON too', () => {
    fc.assert(
      fc.property(pair, (a) => {
        expect(Rational.parse(`${of(a)}`)).toStrictEqual(of(a));
        expect(JSON.parse(JSON.stringify({ a: of(a) }))).toEqual({ a: `${of(a)}` });
      }),
    );
  });

  it('sums a list', () => {
    const thirds = [Rational.of(1, 3), Rational.of(1, 3), Rational.of(1, 3)];
    expect(Rational.sum(thirds)).toStrictEqual(Rational.ONE);
    expect(Rational.sum([])).toStrictEqual(Rational.ZERO);
  });

  it('rounds to a step, half up', () => {
    const half = Rational.of(1, 2);
    const round = (n: number, d: number, step: Rational) => `${Rational.of(n, d).roundTo(step)}`;
    expect(round(354, 10, half)).toBe('71/2');
    expect(round(3525, 100, half)).toBe('71/2');
    expect(round(35249, 1000, half)).toBe('35');
    expect(round(-5, 2, Rational.ONE)).toBe('-2');
    expect(round(5, 2, Rational.ONE)).toBe('3');
    expect(() => half.roundTo(Rational.ZERO)).toThrow(RangeError);
    expect(() => half.roundTo(Rational.of(-1))).toThrow(RangeError);
  });

  it('gives the nearest double', () => {
    expect(Rational.parse('17.7')?.toNumber()).toBe(17.7);
    expect(Rational.of(2n ** 80n + 1n, 2n ** 80n).toNumber()).toBe(1);
    expect(Rational.of(1n, 3n ** 50n).toNumber()).toBe(1 / 3 ** 50);
    expect(Rational.of(2n ** 2000n).toNumber()).toBe(Number.POSITIVE_INFINITY);
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true, min: 1e-300, max: 1e300 }),
        fc.boolean(),
        (x, negative) => {
          // JavaScript reads decimals correctly rounded: an independent way to the nearest double.
          const text = BigInt(Math.floor(Math.abs(x) % 1e15)).toString();
          const decimal = `${negative ? '-' : ''}${text}.${`${x}`.replace(/\D/g, '')}`;
          expect(Rational.parse(decimal)?.toNumber()).toBe(Number(decimal));
        },
      ),
    );
  });
});
