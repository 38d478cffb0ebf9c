import { firstPieces, planWork, Rational } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { firstRows } from '../../packages/output/src/plan/first-piece-words.js';
import { firstPieceBlock } from '../../packages/output/src/sheet/first-piece.js';
import { textWidth } from '../../packages/output/src/sheet/metrics.js';
import { type Mark, Pen } from '../../packages/output/src/sheet/page.js';
import { exampleText } from '../support/examples.js';
import { examineText } from '../support/read.js';

type Words = Extract<Mark, { kind: 'text' }>;

async function blocks(text: string, units: 'mm' | 'in') {
  const { results } = await examineText(text);
  const items = results.map((result) => ({ result, count: 2 }));
  const plan = await planWork(items);
  const job = { title: ['job Test'], items, plan, errors: 0 };
  return plan.setUps.map((setUp) => {
    const block = firstPieceBlock(job, setUp, 186, { units });
    const pen = new Pen();
    block.draw(pen, 12, 100);
    const words = pen.marks.filter((mark): mark is Words => mark.kind === 'text');
    return { setUp, block, words };
  });
}

const left = ({ x, text, size, bold, align }: Words): number => (align === 'end' ? x - textWidth(text, size, bold) : x);
const right = (word: Words): number => left(word) + textWidth(word.text, word.size, word.bold);

describe('the first piece on a page', () => {
  it.each(['periodicals', 'rail-base', 'returns-bin', 'display-plinth', 'corner-plinth'])(
    'of %s stays within its room, legible and with no words over others',
    async (name) => {
      for (const units of ['mm', 'in'] as const)
        for (const { block, words } of await blocks(exampleText(`${name}.joinery`), units)) {
          expect(words.length).toBeGreaterThan(10);
          for (const word of words) {
            expect(left(word), word.text).toBeGreaterThanOrEqual(12 - 1e-6);
            expect(right(word), word.text).toBeLessThanOrEqual(12 + 186 + 1e-6);
            expect(word.y, word.text).toBeLessThanOrEqual(100 + block.height);
            expect(word.size, word.text).toBeGreaterThan(1.9);
          }
          for (const [i, one] of words.entries())
            for (const other of words.slice(i + 1))
              if (Math.abs(one.y - other.y) < 0.01)
                expect(
                  right(one) <= left(other) + 1e-6 || right(other) <= left(one) + 1e-6,
                  `${one.text} / ${other.text}`,
                ).toBe(true);
        }
    },
  );

  it.each(['mm', 'in'] as const)(
    'tells figures that are no looser than the exact ones, nor closer than calipers, in %s',
    async (units) => {
      // Of a third of a millimetre the half is no whole hundredth, and no whole thousandth of an inch.
      const text = exampleText('periodicals.joinery').replace('"shop.joinery"', '"shop.joinery"\nlimits { step 1/3 }');
      const { results } = await examineText(text);
      const items = results.map((result) => ({ result, count: 2 }));
      const unit = units === 'mm' ? Rational.of(1, 100) : Rational.of(254, 10_000);
      const exactly = (words: string): Rational =>
        (Rational.parse(words) as Rational).mul(units === 'mm' ? Rational.ONE : Rational.of(254, 10));
      let bounds = 0;
      for (const setUp of (await planWork(items)).setUps)
        for (const piece of firstPieces(setUp, items)) {
          const rows = [...firstRows(piece, units)];
          for (const { what, wanted, toWall, bounds: exact } of piece.measures) {
            const wall = what === 'across' && toWall instanceof Rational ? toWall : undefined;
            for (const off of wall ? [wall.neg(), wall] : [Rational.ZERO]) {
              const row = rows.shift();
              for (const way of ['least', 'most'] as const) {
                const bound = exact[way]?.at;
                if (!row || !bound || bound.equals(wanted)) continue;
                const looser = exactly(row[way]).sub(bound.add(off));
                const inward = way === 'least' ? looser : looser.neg();
                expect([inward.sign() >= 0, inward.lt(unit)], `${row.what} ${way} ${row[way]}`).toEqual([true, true]);
                bounds++;
              }
            }
          }
          expect(rows).toEqual([]);
        }
      expect(bounds).toBeGreaterThan(20);
    },
  );

  it('says so where the shop has written nothing', async () => {
    const text = exampleText('periodicals.joinery').replace('import "shop.joinery"', 'import "bare.joinery"');
    const bare = `units mm
material birch18 { thickness 18  measured 17.7 }
material ply6 { thickness 6  measured 5.8 }
machine joiner { cutter 100  kerf 4  base to centre 9.5 }
connector biscuit20 : biscuit { along 56  across 23  thickness 4  plunge 12.3  by joiner }
pattern deep5 { lines 70, 180, 270, 420, 500 }`;
    const own = text.replace('import "bare.joinery"', bare.split('\n').slice(1).join('\n'));
    const made = await blocks(own, 'mm');
    expect(made.length).toBeGreaterThan(0);
    for (const { words } of made) {
      const all = words.map(({ text: word }) => word).join('\n');
      expect(all).toContain('not written');
      expect(all.replace(/\s+/g, ' ')).toContain('step in limits');
      expect(all).not.toContain('fence:');
      expect(all).toContain('marked out');
    }
  });
});
