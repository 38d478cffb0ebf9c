import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import type { Jig } from '../spec/stock.js';
import { makeUp, worstOff } from './spacers.js';

const mm = (text: string): Rational => Rational.parse(text) ?? Rational.ZERO;
const none = { plus: Rational.ZERO, minus: Rational.ZERO };
const jig = (spacers: readonly string[], within = '0.2'): Jig => ({
  name: 'longbed',
  source: { uri: '', start: 0, end: 0 },
  fences: ['left', 'right'],
  spacers: spacers.map(mm),
  within: mm(within),
});
const rack = jig(['6', '10', '12', '19', '25']);

describe('making up a spacer', () => {
  it('stacks 22 from 12 and 10, and 16 from 10 and 6', () => {
    expect(makeUp(mm('22'), none, rack, false)).toMatchObject({ kind: 'stock' });
    expect(makeUp(mm('22'), none, rack, false).stack.map(String)).toEqual(['12', '10']);
    expect(makeUp(mm('16'), none, rack, false).stack.map(String)).toEqual(['10', '6']);
  });

  it('takes a stack exactly at the tolerance and refuses a thousandth more', () => {
    expect(makeUp(mm('21.8'), none, rack, false).kind).toBe('stock');
    expect(makeUp(mm('21.799'), none, rack, false).kind).toBe('missing');
  });

  it('refuses 21.8 when the back it follows from may itself be 0.1 out', () => {
    const spacer = makeUp(mm('21.8'), { plus: mm('0.1'), minus: mm('0.1') }, rack, false);
    expect(spacer.kind).toBe('missing');
    expect(spacer.stack.map(String)).toEqual(['12', '10']);
    expect(worstOff(spacer.off, spacer.tolerance).toString()).toBe('3/10');
  });

  it('uses each piece once, needs none for no setback, and no stock for a cut block or a shop without a jig', () => {
    expect(makeUp(mm('20'), none, jig(['10']), false).kind).toBe('missing');
    expect(makeUp(mm('20'), none, jig(['10', '10']), false).stack.map(String)).toEqual(['10', '10']);
    expect(makeUp(mm('0'), none, rack, false).kind).toBe('none');
    expect(makeUp(mm('21.8'), none, rack, true).kind).toBe('cut');
    expect(makeUp(mm('21.8'), none, undefined, false).kind).toBe('mark out');
  });

  it('agrees with trying every subset', () => {
    const width = fc.integer({ min: 1, max: 800 });
    const stock = fc.array(fc.integer({ min: 1, max: 300 }), { maxLength: 7 });
    fc.assert(
      fc.property(width, stock, fc.integer({ min: 0, max: 5 }), (w, pieces, within) => {
        const spacer = makeUp(
          Rational.of(w, 10),
          none,
          jig(
            pieces.map((p) => `${p}/10`),
            `${within}/10`,
          ),
          false,
        );
        let best = { size: Number.POSITIVE_INFINITY, off: Number.POSITIVE_INFINITY };
        let nearest = Number.POSITIVE_INFINITY;
        for (let mask = 1; mask < 1 << pieces.length; mask++) {
          const chosen = pieces.filter((_, i) => mask & (1 << i));
          const off = Math.abs(chosen.reduce((a, b) => a + b, 0) - w);
          nearest = Math.min(nearest, off);
          if (off > within) continue;
          if (chosen.length < best.size || (chosen.length === best.size && off < best.off))
            best = { size: chosen.length, off };
        }
        if (best.size === Number.POSITIVE_INFINITY) {
          expect(spacer.kind).toBe('missing');
          if (pieces.length > 0) expect(spacer.off.abs().equals(Rational.of(nearest, 10))).toBe(true);
        } else {
          expect(spacer.kind).toBe('stock');
          expect(spacer.stack.length).toBe(best.size);
          expect(spacer.off.abs().equals(Rational.of(best.off, 10))).toBe(true);
        }
      }),
    );
  });
});
