import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import { chord } from './disc.js';
import { mitreSkin, mitreWall, mitreWindow } from './mitre.js';

const mm = (text: string): Rational => Rational.parse(text) ?? Rational.ZERO;

describe('slot chord 2·√(p·(D − p))', () => {
  it('is exact where the root is, and known to a bound where it is not', () => {
    expect(chord(mm('100'), mm('10'))).toMatchObject({ value: 60 });
    const found = chord(mm('100'), mm('12.3'));
    expect(found.value).toBeCloseTo(65.6874, 4);
    expect(found.error).toBeLessThan(1e-9);
  });

  it('is the diameter past the half disc, and nothing without a plunge', () => {
    expect(chord(mm('100'), mm('60')).value).toBe(100);
    expect(chord(mm('100'), mm('0')).value).toBe(0);
  });

  it('inverts: a chord of 56 comes at plunge (100 − √(100² − 56²))/2', () => {
    expect(chord(mm('100'), Rational.of(85754, 10000)).value).toBeCloseTo(56, 3);
  });
});

describe('a slot in a 45° mitre face', () => {
  const window = (t: string, p: string) => mitreWindow(mm(t), mm('4'), mm(p), mm('3'), mm('3'));
  it.each([
    ['18', '12.3', 18.54, 20.46],
    ['17.5', '12.3', 18.54, 19.75],
    ['16', '8', 14.24, 17.63],
  ])('t %s, plunge %s fits from %d to %d off the toe', (t, p, from, to) => {
    expect(window(t, p).from.value).toBeCloseTo(from, 2);
    expect(window(t, p).to.value).toBeCloseTo(to, 2);
  });

  it.each([
    ['16', '12.3'],
    ['12', '8'],
  ])('has no room in t %s at plunge %s', (t, p) => {
    expect(window(t, p).from.value).toBeGreaterThan(window(t, p).to.value);
  });

  // Worked by hand at 22.5°, half the turn of a corner of 45°: sin 0.38268, cos 0.92388, so from
  // 2 + (3 + 12.3 · 0.38268)/0.92388 to 17.7/0.92388 − 2 − 3.
  it('t 17.7, plunge 12.3 at 22.5° fits from 10.342 to 14.158 off the toe', () => {
    const { from, to } = mitreWindow(mm('17.7'), mm('4'), mm('12.3'), mm('3'), mm('3'), 22.5);
    expect(from.value).toBeCloseTo(10.342, 3);
    expect(to.value).toBeCloseTo(14.158, 3);
  });

  // Worked by plane geometry: cover under the outer face at u from the heel is t − (u + k/2 + d)/√2, so at
  // a = t·√2 − u from the toe the two formulas must agree.
  it.each([
    ['12.3', 12.7279, -1.1116],
    ['12.3', 8, 2.2315],
    ['12.3', 6, 3.6457],
    ['10', 12.7279, 0.5147],
    ['10', 8, 3.8579],
    ['8', 12.7279, 1.9289],
    ['8', 8, 5.2721],
  ])('plunge %s, %d from the heel, covers %d', (p, fromHeel, cover) => {
    const a = Rational.of(Math.round((18 * Math.SQRT2 - fromHeel) * 1e6), 1_000_000);
    expect(mitreSkin(a, mm('4'), mm(p)).value).toBeCloseTo(cover, 3);
    expect(mitreWall(mm('18'), a, mm('4')).value).toBeCloseTo(fromHeel - 2, 3);
  });
});
