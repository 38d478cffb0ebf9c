import { planWork, Rational } from '@dryfit/engine';
import { type Mark, sheetPages } from '@dryfit/output';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Card, cardsOf } from '../../packages/output/src/sheet/cards.js';
import { spread } from '../../packages/output/src/sheet/line-figures.js';
import { textWidth } from '../../packages/output/src/sheet/metrics.js';
import { type Frame, Pen } from '../../packages/output/src/sheet/page.js';
import { type Placed, shared } from '../../packages/output/src/sheet/share.js';
import { shortened } from '../../packages/output/src/sheet/shorten.js';
import { exampleText } from '../support/examples.js';
import { examineOne, examineText } from '../support/read.js';

const NAMES = ['periodicals', 'rail-base', 'returns-bin', 'display-plinth', 'corner-plinth'];
/** What a first sheet on A4 has for its cards, and one on Letter, mm. */
const ROOMS: readonly Frame[] = [
  { x: 12, y: 101, width: 186, height: 156 },
  { x: 12, y: 101, width: 191.9, height: 138 },
];
const POINT = 25.4 / 72;

async function sheets(name: string, units: 'mm' | 'in', room: Frame): Promise<readonly (readonly Placed[])[]> {
  const { results } = await examineText(exampleText(`${name}.joinery`));
  const items = results.map((result) => ({ result, count: 2 }));
  const job = { title: ['job Test'], items, plan: await planWork(items), errors: 0 };
  return job.plan.setUps.flatMap((setUp) => shared(cardsOf(job, setUp, { units }), setUp, () => room, { units }));
}

const drawn = ({ block, frame }: Placed): readonly Mark[] => {
  const pen = new Pen();
  block.draw(pen, frame);
  return pen.marks;
};

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** By the widths of its letters; what the letters rise and sink by is of Helvetica (capitals 0.72, descenders 0.21). */
function boxOf(mark: Mark): Box {
  if (mark.kind === 'box')
    return { left: mark.x, right: mark.x + mark.width, top: mark.y, bottom: mark.y + mark.height };
  if (mark.kind === 'line') {
    const [xs, ys] = [0, 1].map((i) => [mark.from[i] ?? 0, mark.to[i] ?? 0]) as [number[], number[]];
    return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
  }
  const { x, y, text, size, bold, align, upright } = mark;
  const wide = textWidth(text, size, bold);
  const back = align === 'middle' ? wide / 2 : align === 'end' ? wide : 0;
  const [rise, sink] = [size * 0.72, /[gjpqy,;()]/.test(text) ? size * 0.21 : 0];
  if (upright) return { left: x - rise, right: x + sink, top: y - wide + back, bottom: y + back };
  return { left: x - back, right: x - back + wide, top: y - rise, bottom: y + sink };
}

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right - 0.05 && b.left < a.right - 0.05 && a.top < b.bottom - 0.05 && b.top < a.bottom - 0.05;

describe.each(NAMES)('the cards of %s', (name) => {
  test('hold all that is drawn, no words on words, nothing struck out, nothing too small', async () => {
    let words = 0;
    for (const room of ROOMS)
      for (const units of ['mm', 'in'] as const)
        for (const sheet of await sheets(name, units, room)) {
          for (const [i, { frame }] of sheet.entries()) {
            const own = boxOf({ kind: 'box', pen: 0, ...frame });
            expect(own.right <= room.x + room.width + 0.01 && own.bottom <= room.y + room.height + 0.01).toBe(true);
            for (const other of sheet.slice(i + 1))
              expect(meet(own, boxOf({ kind: 'box', pen: 0, ...other.frame }))).toBe(false);
          }
          for (const placed of sheet) {
            const marks = drawn(placed);
            const card = boxOf({ kind: 'box', pen: 0, ...placed.frame });
            const texts = marks.flatMap((mark, at) =>
              mark.kind === 'text' ? [{ ...mark, at, box: boxOf(mark) }] : [],
            );
            for (const mark of marks) {
              const box = boxOf(mark);
              expect(
                box.left >= card.left && box.right <= card.right && box.top >= card.top && box.bottom <= card.bottom,
                JSON.stringify(mark),
              ).toBe(true);
            }
            for (const [i, one] of texts.entries()) {
              expect(one.size, one.text).toBeGreaterThanOrEqual(7 * POINT);
              if (one.bold && /^\d[\d/ .]*$|^base |^spacer /.test(one.text))
                expect(one.size).toBeGreaterThanOrEqual(9 * POINT);
              for (const other of texts.slice(i + 1))
                expect(meet(one.box, other.box), `${one.text} / ${other.text}`).toBe(false);
              // What is drawn after words would strike them out; bars of slots and outlines never stand on them.
              for (const later of marks.slice(one.at + 1))
                if (later.kind !== 'text') expect(meet(one.box, boxOf(later)), `${one.text} struck out`).toBe(false);
              for (const other of marks)
                if (other.kind === 'box' && other.grey === 1)
                  expect(meet(one.box, boxOf(other)), `${one.text} on a slot`).toBe(false);
              words++;
            }
          }
        }
    expect(words).toBeGreaterThan(100);
  });

  test('show every line at its true distance from the fence, to the scale that is told, and say what is shortened', async () => {
    let lines = 0;
    for (const sheet of await sheets(name, 'mm', ROOMS[0] as Frame))
      for (const placed of sheet) {
        const { half } = placed.card.operation;
        const marks = drawn(placed);
        const scale = Number(/^scale 1:(\d+)/.exec(textsOf(marks).find((one) => one.startsWith('scale')) ?? '')?.[1]);
        const bars = marks.flatMap((mark) => (mark.kind === 'box' && mark.grey === 1 ? [mark] : []));
        const at = bars.map(({ x, width }) => x + width / 2).sort((a, b) => a - b);
        const told = half.slots.map(({ fromZero }) => fromZero.toNumber()).sort((a, b) => a - b);
        const order = placed.card.hand === 'left' ? told : [...told].reverse();
        expect(at).toHaveLength(order.length);
        for (const [i, x] of at.entries())
          if (i > 0)
            expect(x - (at[i - 1] ?? 0)).toBeCloseTo(Math.abs((order[i] ?? 0) - (order[i - 1] ?? 0)) / scale, 6);
        lines += at.length;
        if (half.role !== 'mitre' && !half.turn)
          expect(isShorter(placed.card, marks, scale)).toBe(textsOf(marks).includes('shortened'));
      }
    expect(lines).toBeGreaterThan(10);
  });
});

const textsOf = (marks: readonly Mark[]): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

/** Whether the outline of the piece, drawn with the broadest pen, is less high than the piece is to scale. */
function isShorter({ operation: { part, half } }: Card, marks: readonly Mark[], scale: number): boolean {
  const outline = marks.find((mark) => mark.kind === 'box' && mark.pen === 0.7);
  // A face stands on the end its slots are measured from; of an edge the piece runs away from the edge.
  const across = AXES[half.role === 'face' ? half.from.side : half.surface];
  return outline?.kind === 'box' && outline.height < (part.extent[across]?.toNumber() ?? 0) / scale - 0.01;
}

const AXES = { left: 'x', right: 'x', front: 'y', rear: 'y', bottom: 'z', top: 'z' } as const;

test('four cards stand on every sheet of the library’s racks on A4, however tall their pieces', async () => {
  const { jobs } = await examineOne('periodicals.joinery', {
    'periodicals.joinery': exampleText('periodicals.joinery'),
    'shop.joinery': exampleText('shop.joinery'),
  });
  const items = jobs[0]?.lines ?? [];
  const job = { title: ['job Library'], items, plan: await planWork(items), errors: 0 };
  const pages = sheetPages(job, 'A4', { units: 'mm' });
  const cards = pages.map(
    ({ marks }) => textsOf(marks).filter((text) => /^\d\. (LEFT|RIGHT) FENCE: /.test(text)).length,
  );
  expect(cards.filter((count) => count > 0)).toEqual([4, 4, 4, 4, 4, 4]);
  expect(job.plan.setUps).toHaveLength(4);
});

describe('a length that is shortened', () => {
  const lengths = fc.record({
    whole: fc.integer({ min: 10, max: 400 }),
    room: fc.integer({ min: 32, max: 120 }),
    share: fc.integer({ min: 0, max: 100 }),
    end: fc.integer({ min: 2, max: 5 }),
  });

  test('fills its room, keeps its order, and is to scale wherever no break stands', () => {
    let twice = 0;
    fc.assert(
      fc.property(lengths, ({ whole, room, share, end }) => {
        const seen = (share / 100) * whole;
        const { at, kept, breaks } = shortened(whole, room, seen, end);
        expect(at(0)).toBeCloseTo(0, 9);
        expect(at(whole)).toBeCloseTo(Math.min(whole, room), 9);
        expect(breaks).toHaveLength(kept.length - 1);
        expect(whole <= room).toBe(breaks.length === 0);
        const places = Array.from({ length: 41 }, (_, i) => (i / 40) * whole);
        for (const [i, place] of places.entries()) {
          const [here, next] = [at(place), at(places[i + 1] ?? whole)];
          expect(next).toBeGreaterThanOrEqual(here - 1e-9);
          const isKept = kept.some(([from, to]) => here >= from - 1e-9 && next <= to + 1e-9);
          if (isKept) expect(next - here).toBeCloseTo((places[i + 1] ?? whole) - place, 6);
        }
        // What must be seen is never in a break.
        const there = at(seen);
        expect(kept.some(([from, to]) => there >= from - 1e-6 && there <= to + 1e-6)).toBe(true);
        if (breaks.length === 2) twice++;
      }),
    );
    expect(twice).toBeGreaterThan(0);
  });
});

describe('figures that stand close together', () => {
  test('are spread without overlap, in their order, within their bounds, and as little as can be', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ x: fc.integer({ min: 0, max: 80 }), wide: fc.integer({ min: 2, max: 8 }) }), {
          minLength: 1,
          maxLength: 14,
        }),
        (items) => {
          const sorted = [...items].sort((a, b) => a.x - b.x);
          const places = spread(sorted, 0, 80);
          const wide = sorted.reduce((sum, one) => sum + one.wide, 0);
          expect(places === undefined).toBe(wide > 80);
          if (!places) return;
          const edges = sorted.map((one, i) => [(places[i] ?? 0) - one.wide / 2, (places[i] ?? 0) + one.wide / 2]) as [
            number,
            number,
          ][];
          expect(edges[0]?.[0]).toBeGreaterThanOrEqual(-1e-9);
          expect(edges.at(-1)?.[1]).toBeLessThanOrEqual(80 + 1e-9);
          edges.slice(1).forEach(([from], i) => {
            expect(from).toBeGreaterThanOrEqual((edges[i]?.[1] ?? 0) - 1e-9);
          });
          // Whoever has room where it belongs stays there.
          const free = sorted.every(
            (one, i) =>
              one.x - one.wide / 2 >= (sorted[i - 1] ? (sorted[i - 1]?.x ?? 0) + (sorted[i - 1]?.wide ?? 0) / 2 : 0) &&
              one.x + one.wide / 2 <= 80,
          );
          if (free) expect(places).toEqual(sorted.map(({ x }) => x));
        },
      ),
    );
  });
});

test('lines so close that their figures have no room stand upright, each led to its own', async () => {
  const lines = Array.from({ length: 14 }, (_, i) => 40 + 32 * i);
  const text = exampleText('periodicals.joinery')
    .replace('biscuit20 by deep5', 'tenon8 by close')
    .replace('import "shop.joinery"', `import "shop.joinery"\npattern close { lines ${lines.join(', ')} }`);
  const { results } = await examineText(text);
  const items = results.slice(0, 1).map((result) => ({ result, count: 1 }));
  const job = { title: ['job Test'], items, plan: await planWork(items), errors: 0 };
  const [setUp] = job.plan.setUps;
  if (!setUp) throw new Error('nothing is milled');
  const format = { units: 'mm' } as const;
  const [sheet = []] = shared(cardsOf(job, setUp, format), setUp, () => ROOMS[0] as Frame, format);
  const [placed] = sheet;
  if (!placed) throw new Error('no card');
  const upright = drawn(placed).filter((mark) => mark.kind === 'text' && mark.upright && /^\d+$/.test(mark.text));
  expect(upright).toHaveLength(placed.card.lines.length);
  expect(placed.card.lines.some((line) => line.equals(Rational.of(40)))).toBe(true);
});
