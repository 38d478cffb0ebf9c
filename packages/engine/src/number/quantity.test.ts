import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { constant, minus, negate, ofInput, plus, product, type Quantity, quotient, scale } from './quantity.js';
import { Rational } from './rational.js';

const r = (text: string) => Rational.parse(text) as Rational;
const shown = ({ value, terms }: Quantity) =>
  `${value} ${terms.map((t) => `${t.input}*${t.coefficient}`).join(' ')}`.trim();
const wide = ofInput('parameter wide', r('600'));
const thick = ofInput('thickness birch18', r('17.7'));

describe('quantities', () => {
  it('carry their dependence on inputs', () => {
    const shelf = minus(wide, scale(thick, Rational.TWO));
    expect(shown(shelf)).toBe('2823/5 parameter wide*1 thickness birch18*-2');
    expect(shown(plus(thick, wide))).toBe('6177/10 parameter wide*1 thickness birch18*1');
    expect(shown(minus(shelf, wide))).toBe('-177/5 thickness birch18*-2');
    expect(shown(negate(thick))).toBe('-177/10 thickness birch18*-1');
    expect(shown(minus(thick, thick))).toBe('0');
    expect(shown(scale(thick, Rational.ZERO))).toBe('0');
    expect(shown(plus(constant(r('1/3')), constant(r('2/3'))))).toBe('1');
  });

  it('know the tangent of products and quotients', () => {
    expect(shown(product(wide, thick))).toBe('10620 parameter wide*177/10 thickness birch18*600');
    expect(shown(product(wide, wide))).toBe('360000 parameter wide*1200');
    expect(shown(quotient(wide, constant(r('4'))))).toBe('150 parameter wide*1/4');
    expect(shown(quotient(wide, wide))).toBe('1');
    expect(() => quotient(wide, constant(Rational.ZERO))).toThrow(RangeError);
  });

  it('have the slope that the formula has, for products of three inputs', () => {
    const value = fc
      .tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: 1, max: 9 }))
      .map(([n, d]) => Rational.of(n, d));
    fc.assert(
      fc.property(value, value, value, (x, y, z) => {
        // f = xyz + x − y²: by hand, ∂f/∂x = yz + 1, ∂f/∂y = xz − 2y, ∂f/∂z = xy.
        const [a, b, c] = [ofInput('a', x), ofInput('b', y), ofInput('c', z)];
        const f = minus(plus(product(product(a, b), c), a), product(b, b));
        const slope = (input: string) => f.terms.find((t) => t.input === input)?.coefficient ?? Rational.ZERO;
        expect(f.value).toStrictEqual(x.mul(y).mul(z).add(x).sub(y.mul(y)));
        expect(slope('a')).toStrictEqual(y.mul(z).add(Rational.ONE));
        expect(slope('b')).toStrictEqual(x.mul(z).sub(y.mul(Rational.TWO)));
        expect(slope('c')).toStrictEqual(x.mul(y));
        expect(f.terms.map((t) => t.input)).toEqual([...f.terms.map((t) => t.input)].sort());
        expect(f.terms.every((t) => !t.coefficient.isZero())).toBe(true);
      }),
    );
  });
});
