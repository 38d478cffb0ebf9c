import {
  type Bounded,
  contributorsIn,
  figuresOf,
  ifCutAsPlanned,
  ifMeasured,
  Rational,
  type Result,
  reckon,
  resultsOf,
  type Tried,
  tryOut,
} from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { generator } from '../support/random.js';
import { fitText } from '../support/read.js';
import { type Corner, written } from './corner.js';
import { JIG, LOOSE, MadeUnit } from './made-unit.js';

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);

/** A cant by its two legs, or as a drawing tells it: by its length and its degrees from the front. */
const legs = fc.oneof(
  fc.record({ legX: tenths(180, 330), legY: tenths(180, 330) }),
  fc.record({ long: tenths(300, 420), degrees: fc.integer({ min: 33, max: 57 }) }).map(({ long, degrees }) => {
    const leg = (share: number) => Math.round(long * share * 10) / 10;
    return { legX: leg(Math.cos((degrees * Math.PI) / 180)), legY: leg(Math.sin((degrees * Math.PI) / 180)) };
  }),
);
const units = fc
  .record({
    x: fc.constantFrom('left' as const, 'right' as const),
    y: fc.constantFrom('front' as const, 'rear' as const),
    wide: tenths(520, 800),
    deep: tenths(520, 800),
    inner: fc.boolean(),
    pose: fc.constantFrom('up' as const, 'down' as const),
  })
  .chain((corner) => legs.map((cut): Corner => ({ ...corner, ...cut })));
const shops = fc.constantFrom('a jig', 'none');

async function built(corner: Corner, shop: 'a jig' | 'none') {
  const base = 'base to centre 9.5 ± 0.1';
  const text = written(corner)
    .replace('base to centre 9.5', base)
    .replace('cabinet Unit', `${shop === 'a jig' ? JIG : ''}${LOOSE}cabinet Unit`);
  const { spec, fit } = await fitText(text);
  const results = resultsOf(reckon(spec));
  return { fit, results, unit: (off: (name: string) => number) => new MadeUnit(corner, fit, shop === 'a jig', off) };
}

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

function amount(adds: Tried, off: (name: string) => number): number {
  if ('curve' in adds) return adds.curve.at(adds.curve.of.map(({ id }) => off(id)));
  const { shift, terms } = adds.stack;
  return terms.reduce((sum, { of, coefficient }) => sum + coefficient.toNumber() * off(of.id), shift.toNumber());
}

/** Steps, ends, openings and toes at base, top, stub and end, and the span. */
const KINDS = 15;
/** Things off at once whose corners are all tried. */
const MOST_AT_ONCE = 16;

const number = (length: Rational | Bounded): number => (length instanceof Rational ? length.toNumber() : length.value);

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

/** The unit with its face laid on the cant from outside, by slots or by glue alone, and nothing mitred to it. */
async function laid(corner: Corner, shop: 'a jig' | 'none', glued: boolean, loose: string) {
  const { wide, deep, legX, legY } = corner;
  const thick = 17.7;
  const text = written(corner)
    .replace('base to centre 9.5', 'base to centre 9.5 ± 0.1')
    .replace('cabinet Unit', `${shop === 'a jig' ? JIG : ''}${LOOSE}cabinet Unit`)
    .replace(/ {2}mitre face .*\n/, '')
    .replace(`depth ${legY} }`, `depth ${legY} ${loose} }`)
    .replace(
      'butt face between base and top',
      `butt face to base.cant { flush bottom  ${glued ? 'connect none "glued"' : ''} }
  height 500 of face
  width ${(Number(wide) - thick - Number(legX)).toFixed(4)} of stub
  depth ${(Number(deep) - thick - Number(legY)).toFixed(4)} of end`,
    );
  const { spec, fit } = await fitText(text);
  const outside = resultsOf(reckon(spec)).filter(({ id }) => id.startsWith('outside') && id.includes('face'));
  return {
    spec,
    fit,
    outside,
    unit: (off: (name: string) => number) => new MadeUnit(corner, fit, shop === 'a jig', off),
  };
}

describe('a turned part laid on its cant from outside', () => {
  const wishes = fc.tuple(units, shops, fc.boolean(), fc.integer({ min: 1, max: 1e6 }));

  test('brings its corner to the outside sizes, as far out as the built unit has it', async () => {
    await fc.assert(
      fc.asyncProperty(wishes, async ([corner, shop, glued, seed]) => {
        const { fit, outside, unit } = await laid(corner, shop, glued, '');
        const random = generator(seed);
        const known = new Map<string, number>();
        const off = (name: string): number => {
          if (!known.has(name)) known.set(name, random() - 0.5);
          return known.get(name) ?? 0;
        };
        const [planned, made] = [unit(() => 0), unit(off)];
        expect(outside.map(({ about }) => about.kind === 'outside' && about.distance.axis)).toEqual(['x', 'y', 'z']);
        for (const [i, axis] of (['x', 'y'] as const).entries()) {
          const { adds, about } = outside[i] as Result;
          const size = planned.outside(i as 0 | 1);
          expect(about.kind === 'outside' && about.distance.length.toNumber()).toBeCloseTo(size, 2);
          expect(fit.outside?.[axis].toNumber()).toBeCloseTo(size, 2);
          expect(amount(adds, off), axis).toBeCloseTo(made.outside(i as 0 | 1) - size, 8);
        }
      }),
      { numRuns: 16 },
    );
  });

  test("takes a tolerance that is written for a leg of the cant instead of the saw's", async () => {
    const corner: Corner = { x: 'right', y: 'front', wide: 700, deep: 640, legX: 310, legY: 190.5 };
    const { outside, unit } = await laid(corner, 'none', false, '± 0.6');
    const [width] = outside as [Result];
    const of = contributorsIn(width.adds).filter(({ id }) => id.includes('cant of base'));
    expect(of.map(({ origin, plus }) => `${origin} ${plus}`)).toEqual(['written 3/5']);
    const written = of[0]?.id ?? '';
    expect(contributorsIn(width.adds).map(({ id }) => id)).not.toContain('saw base.cant y');
    const moved = unit((name) => (name === 'saw base.cant y' ? 0.6 : 0)).outside(0) - unit(() => 0).outside(0);
    expect(amount(width.adds, (name) => (name === written ? 0.6 : 0))).toBeCloseTo(moved, 8);
    expect(Math.abs(moved)).toBeGreaterThan(0.01);
  });

  test('makes the cabinet as much smaller in a thinner batch as its face is thinner, by the sine of the cant', async () => {
    const corner: Corner = { x: 'right', y: 'front', wide: 700, deep: 640, legX: 300, legY: 225 };
    const { spec } = await laid(corner, 'none', false, '');
    const moved = ifCutAsPlanned(spec, new Map([['board', Rational.of(174, 10)]]));
    const by = new Map(moved.map(({ result, by: off }) => [result.id, number(off)]));
    // Legs of 300 and 225 make a cant of 375; its face looks 0.6 to the right and 0.8 to the front.
    expect(by.get('outside base.left to face.right')).toBeCloseTo(-0.3 * 0.6, 7);
    expect(by.get('outside face.front to base.rear')).toBeCloseTo(-0.3 * 0.8, 7);
  });
});

describe('another batch', () => {
  test('changes the heights of a turned part and what stands beside it, and never its width', async () => {
    await fc.assert(
      fc.asyncProperty(units, fc.integer({ min: 1740, max: 1800 }), async (corner, hundredths) => {
        const { spec } = await fitText(written(corner));
        const thick = Rational.of(hundredths, 100);
        const off = 17.7 - thick.toNumber();
        const { recut } = ifMeasured(spec, new Map([['board', thick]]));
        const told = new Map(recut.map(({ part, size, change }) => [`${part} ${size}`, change.to.sub(change.from)]));
        if (hundredths === 1770) return expect(told.size).toBe(0);
        const by = (what: string) => told.get(what)?.toNumber() ?? 0;
        // Base and top are as much less thick together as what stands between them is longer.
        expect(by('face length')).toBeCloseTo(2 * off, 9);
        expect(told.has('face width')).toBe(false);
        for (const part of ['base', 'top', 'side']) expect(by(`${part} width`), part).toBe(0);
        for (const part of ['stub', 'end']) expect(by(`${part} width`), part).toBeCloseTo(off, 9);
      }),
      { numRuns: 10 },
    );
  });
});
