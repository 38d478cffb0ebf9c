import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import { layOut } from './layout.js';

const mm = (text: string): Rational => Rational.parse(text) ?? Rational.ZERO;
const inch = (text: string): Rational => mm(text).mul(Rational.of(127, 5));
const used = (lines: ReturnType<typeof layOut>): string[] =>
  lines.filter((l) => l.use === 'used').map((l) => l.fromZero.toString());

describe('lines spread from the ends of a contact', () => {
  // Popular Woodworking no. 122 (June 2001) p. 26 and no. 130 (Oct 2002) p. 50: first 2 in from the edge, then
  // every 5 to 7 in. The layouts follow by n = ⌈(L − first − last)/most⌉.
  it('takes the fewest equal intervals not longer than the pitch: 560 mm', () => {
    const layout = { kind: 'spread', first: mm('50'), last: mm('50'), most: mm('150') } as const;
    expect(used(layOut(layout, { from: mm('0'), to: mm('560') }, []))).toEqual(['50', '165', '280', '395', '510']);
  });

  it('does not let fractions accumulate: 23 1/4 in at 2 in and 7 in', () => {
    const layout = { kind: 'spread', first: inch('2'), last: inch('2'), most: inch('7') } as const;
    const lines = layOut(layout, { from: mm('0'), to: inch('23 1/4') }, []).map((l) =>
      l.fromZero.div(Rational.of(127, 5)).toString(),
    );
    expect(lines).toEqual(['2', '101/12', '89/6', '85/4']); // 2, 8 5/12, 14 5/6, 21 1/4
  });

  it('puts two lines without a pitch, and one in the middle of a contact too short for first and last', () => {
    const layout = { kind: 'spread', first: mm('30'), last: mm('20') } as const;
    expect(used(layOut(layout, { from: mm('10'), to: mm('110') }, []))).toEqual(['40', '90']);
    expect(used(layOut(layout, { from: mm('10'), to: mm('50') }, []))).toEqual(['30']);
  });

  it('keeps a fixed pitch and stops short', () => {
    const layout = { kind: 'spread', first: mm('37'), last: mm('37'), pitch: mm('32') } as const;
    const lines = used(layOut(layout, { from: mm('0'), to: mm('200') }, []));
    expect(lines).toEqual(['37', '69', '101', '133']);
  });

  it('never exceeds the pitch, starts and ends where it says, and steps evenly', () => {
    const length = fc.integer({ min: 1, max: 30_000 }).map((n) => Rational.of(n, 10));
    fc.assert(
      fc.property(length, length, length, length, (first, last, most, extra) => {
        const to = first.add(last).add(extra);
        const lines = layOut({ kind: 'spread', first, last, most }, { from: Rational.ZERO, to }, []);
        if (lines.length > 1000) return;
        const at = lines.map((l) => l.fromZero);
        expect(at[0]?.equals(first)).toBe(true);
        expect(at.at(-1)?.equals(to.sub(last))).toBe(true);
        const steps = at.slice(1).map((p, i) => p.sub(at[i] as Rational));
        for (const step of steps) expect(step.le(most) && step.equals(steps[0] as Rational)).toBe(true);
        // One interval fewer would be too long.
        const fewer = steps.length - 1;
        if (fewer > 0) expect(extra.div(Rational.of(fewer)).gt(most)).toBe(true);
      }),
    );
  });
});

describe('written lines', () => {
  it('are used on the contact, ends included, and told apart when not', () => {
    const layout = { kind: 'lines', lines: ['240', '22', '70', '500', '180', '21'].map(mm), skip: mm('30') } as const;
    const lines = layOut(layout, { from: mm('22'), to: mm('260') }, [mm('180')]);
    expect(lines.map((l) => `${l.fromZero} ${l.use}`)).toEqual([
      '21 outside contact',
      '22 skipped',
      '70 used',
      '180 left out',
      '240 skipped',
      '500 outside contact',
    ]);
  });
});
