import {
  type Bounded,
  figuresOf,
  firstPieces,
  ifMeasured,
  planWork,
  Rational,
  reckon,
  resultsOf,
} from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { exampleText } from '../support/examples.js';
import { shuffled } from '../support/random.js';
import { examineText, fitText } from '../support/read.js';
import { written } from './corner.js';
import { built, looseText, number, shops, units } from './loose.js';

// Measure both halves from one plane and the sheet is of no account there. Half the turn at an end of the cant is half of
// the angle whose tangent the legs make; a mitre's face is the thickness over its cosine.
test('the thickness of the sheets drops out of the step and of toes measured from, and comes in from the heels', async () => {
  let [from, kept] = [0, 0];
  await fc.assert(
    fc.asyncProperty(units, shops, async (corner, shop) => {
      const { results } = await built(corner, shop);
      for (const { about, adds } of results) {
        if (about.kind !== 'toes' && (about.kind !== 'step' || about.joint.entering !== 'face')) continue;
        const sheets = figuresOf(adds).contributions.filter(({ of }) => of.origin === 'thickness');
        if (about.kind === 'step' || !corner.inner) {
          expect(sheets).toEqual([]);
          kept++;
          continue;
        }
        const [along, away] = about.joint.host === 'stub' ? [corner.legX, corner.legY] : [corner.legY, corner.legX];
        const face = 1 / Math.cos(Math.atan2(Number(away), Number(along)) / 2);
        const slopes = sheets.map(({ of, coefficient }) => [of.id, coefficient] as const);
        const slopeOf = new Map(slopes);
        expect(slopeOf.get('thickness face 0')).toBeCloseTo(face, 6);
        expect(slopeOf.get(`thickness ${about.joint.host} 0`)).toBeCloseTo(-face, 6);
        expect(slopes.length).toBe(2);
        from++;
      }
    }),
    fixedFirst({ fixed: 6, numRuns: 10 }, units, shops),
  );
  expect(Math.min(from, kept)).toBeGreaterThan(3);
});

test('the order in which a unit is written changes no error and nothing it comes from', async () => {
  await fc.assert(
    fc.asyncProperty(units, fc.integer({ min: 1, max: 1e6 }), async (corner, order) => {
      const text = looseText(corner, 'a jig');
      const isJoint = (line: string) => /^ {2}(butt|mitre face|width|depth|height|top\.\w+|cant) /.test(line);
      const lines = text.split('\n');
      const mixed = shuffled(lines.filter(isJoint), order);
      const other = lines.map((line) => (isJoint(line) ? (mixed.shift() ?? '') : line)).join('\n');
      const told = async (one: string) =>
        resultsOf(reckon((await fitText(one)).spec))
          .map(({ id, adds }) => {
            const { worst, contributions } = figuresOf(adds);
            const near = (length: Rational | Bounded) => (Math.round(number(length) * 1e6) / 1e6 || 0).toString();
            return `${id} ${near(worst.least)} ${near(worst.most)} ${contributions.map(({ of }) => of.id).sort()}`;
          })
          .sort();
      expect(await told(other)).toEqual(await told(text));
    }),
    { numRuns: 8 },
  );
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
        expect(told.size > 0).toBe(hundredths !== 1770);
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

test('first pieces of a turned part and along its cant are measured within bounds that keep the step, whatever both use up', async () => {
  const { results } = await examineText(exampleText('corner-plinth.joinery'));
  const items = results.map((result) => ({ result, count: 2 }));
  const plan = await planWork(items);
  const pieces = plan.setUps.flatMap((setUp) => firstPieces(setUp, items));
  const found = pieces.filter(({ operation }) => operation.joint.id.startsWith('face / base') || operation.half.turn);
  const step = items[0]?.result.spec.shop.limits.step.toNumber() ?? Number.NaN;
  let sides = 0;
  for (const { measures, operation } of found)
    for (const { what, wanted, bounds } of measures) {
      if (what !== 'across' && what !== 'first' && what !== 'last') continue;
      for (const bound of [bounds.least, bounds.most]) {
        const off = Math.abs((bound?.at ?? Rational.of(1000)).sub(wanted).toNumber());
        expect(off, `${operation.half.part} ${what}`).toBeLessThanOrEqual(step / 2);
        expect(off, `${operation.half.part} ${what}`).toBeGreaterThan(0);
        sides++;
      }
    }
  // Across, first and last, least and most, of base, top and the face's own ends.
  expect(sides).toBeGreaterThanOrEqual(18);
});
