import { contributorsIn, figuresOf, type Result, tryOut } from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { generator } from '../support/random.js';
import type { Corner } from './corner.js';
import { amount, built, number, shops, units } from './loose.js';
import type { MadeUnit } from './made-unit.js';

/** What the rule is laid across for each result of the turned part. */
const MEASURED: Readonly<Record<string, (unit: MadeUnit) => number>> = {
  'face / base flush left': (unit) => unit.flush('base', 'left'),
  'face / base flush right': (unit) => unit.flush('base', 'right'),
  'face / top flush left': (unit) => unit.flush('top', 'left'),
  'face / top flush right': (unit) => unit.flush('top', 'right'),
  'face / stub mitre opening': (unit) => unit.opening('stub'),
  'face / end mitre opening': (unit) => unit.opening('end'),
  'face / stub heels': (unit) => unit.heels('stub'),
  'face / end heels': (unit) => unit.heels('end'),
  'face / stub toes': (unit) => unit.toes('stub'),
  'face / end toes': (unit) => unit.toes('end'),
  'span face': (unit) => unit.span(),
};

const measureOf = ({ id, about }: Result): ((unit: MadeUnit) => number) | undefined => {
  if (about.kind === 'step' && about.joint.entering === 'face') return (unit) => unit.step(about.joint.host);
  if (about.kind === 'gap' && about.joint.meeting === 'mitre')
    return (unit) => unit.gap(about.joint.host as 'stub' | 'end');
  return MEASURED[id];
};

/** Steps, ends, openings and toes at base, top, stub and end, and the span. */
const KINDS = 15;
/** Things off at once whose corners are all tried. */
const MOST_AT_ONCE = 16;

describe('a turned part as it is made', () => {
  test('comes as a unit that is built of the panels as they are, whatever each of them is off', async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(units, shops, fc.integer({ min: 1, max: 1e6 }), async (corner, shop, seed) => {
        const { results, unit } = await built(corner, shop);
        const random = generator(seed);
        const known = new Map<string, number>();
        // Up to half a millimetre, or half a degree, of anything, its tolerance or more.
        const off = (name: string): number => {
          if (!known.has(name)) known.set(name, random() - 0.5);
          return known.get(name) ?? 0;
        };
        const told = results.flatMap((result) => {
          const measure = measureOf(result);
          return measure ? [{ result, measure }] : [];
        });
        expect(told.length, told.map(({ result }) => result.id).join()).toBe(KINDS);
        for (const { result, measure } of told) {
          expect(amount(result.adds, off), result.id).toBeCloseTo(measure(unit(off)), 8);
          compared++;
        }
      }),
      fixedFirst({ fixed: 8, numRuns: 24 }, units, shops, fc.integer({ min: 1, max: 1e6 })),
    );
    expect(compared).toBeGreaterThan(100);
  });

  test('depends on each thing as fast as the built unit does, and on nothing else', async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(units, shops, async (corner, shop) => {
        const { results, unit } = await built(corner, shop);
        for (const result of results) {
          const measure = measureOf(result);
          if (!measure) continue;
          const told = new Map(figuresOf(result.adds).contributions.map(({ of, coefficient }) => [of.id, coefficient]));
          const all = unit(() => 0);
          measure(all);
          const step = 1e-4;
          for (const name of new Set([...all.asked, ...told.keys()])) {
            const at = (by: number) => measure(unit((other) => (other === name ? by : 0)));
            const slope = (at(step) - at(-step)) / (2 * step);
            expect(told.get(name) ?? 0, `${result.id}: ${name}`).toBeCloseTo(slope, 5);
            compared++;
          }
        }
      }),
      { numRuns: 6 },
    );
    expect(compared).toBeGreaterThan(500);
  });

  test('comes no further off at the worst than at the worst of all corners of the built unit, and as far', async () => {
    let corners = 0;
    const unit1: Corner = { x: 'right', y: 'front', wide: 700, deep: 640, legX: 310, legY: 190.5 };
    const unit2: Corner = { x: 'left', y: 'rear', wide: 610, deep: 700, legX: 200, legY: 320, inner: true };
    for (const corner of [unit1, unit2]) {
      const { results, unit } = await built(corner, 'none');
      for (const result of results) {
        const measure = measureOf(result);
        const of = contributorsIn(result.adds);
        if (!measure || result.id.startsWith('face / top') || result.id === 'face / end gap right') continue;
        expect(of.length).toBeLessThanOrEqual(MOST_AT_ONCE);
        const places = new Map(of.map(({ id }, i) => [id, i]));
        let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
        for (let mask = 0; mask < 2 ** of.length; mask++) {
          const found = measure(
            unit((name) => {
              const i = places.get(name);
              const one = i === undefined ? undefined : of[i];
              if (!one || i === undefined) return 0;
              return (mask >> i) & 1 ? one.plus.toNumber() : -one.minus.toNumber();
            }),
          );
          least = Math.min(least, found);
          most = Math.max(most, found);
          corners++;
        }
        const { worst } = figuresOf(result.adds);
        // Where there are too many corners for every key, the engine takes those that the slopes point to: what bends
        // between them is less than anybody measures.
        expect(Math.abs(number(worst.least) - least), result.id).toBeLessThan(1e-4);
        expect(Math.abs(number(worst.most) - most), result.id).toBeLessThan(1e-4);
      }
    }
    expect(corners).toBeGreaterThan(80_000);
  });

  test('strays, tried many times, as its root sum square says, and so do trials of the engine', async () => {
    const corner: Corner = { x: 'right', y: 'front', wide: 655, deep: 700, legX: 240, legY: 300 };
    const { results, unit } = await built(corner, 'a jig');
    const told = results.flatMap((result) => {
      const measure = measureOf(result);
      return measure ? [{ result, measure, of: contributorsIn(result.adds) }] : [];
    });
    const samples = 3000;
    const random = generator(20);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const contributors = new Map(told.flatMap(({ of }) => of.map((one) => [one.id, one])));
    const found: number[][] = told.map(() => []);
    for (let trial = 0; trial < samples; trial++) {
      const drawn = new Map<string, number>();
      for (const [id, { plus, minus }] of contributors) {
        const [a, b] = [plus.toNumber(), minus.toNumber()];
        drawn.set(id, (a - b) / 2 + (normal() * (a + b)) / 6);
      }
      told.forEach(({ measure }, i) => {
        found[i]?.push(measure(unit((name) => drawn.get(name) ?? 0)));
      });
    }
    const tried = tryOut(
      told.map(({ result }) => ({ tried: result.adds })),
      samples,
      7,
    );
    expect(told.length).toBe(KINDS);
    told.forEach(({ result }, i) => {
      const { middle, half } = figuresOf(result.adds).rootSumSquare;
      const sigma = half.value / 3;
      const values = found[i] ?? [];
      const mean = values.reduce((a, b) => a + b, 0) / samples;
      const deviation = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (samples - 1));
      for (const trials of [{ mean, deviation }, tried[i] ?? { mean: Number.NaN, deviation: Number.NaN }]) {
        // Five standard errors; the mean of what bends lies off the middle by the square of the errors over the length.
        expect(Math.abs(trials.mean - number(middle)), result.id).toBeLessThan((5 * sigma) / Math.sqrt(samples) + 1e-3);
        expect(Math.abs(trials.deviation - sigma), result.id).toBeLessThan((5 * sigma) / Math.sqrt(2 * samples) + 1e-3);
      }
    });
  });
});
