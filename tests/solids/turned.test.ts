import { type Finding, fit as fitSpec, Rational } from '@dryfit/engine';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { at } from '../../packages/engine/src/testing/joint-items.js';
import { cornerUnit } from '../../packages/engine/src/turned/corner.fixture.js';
import { LET_PASS } from './compare.js';
import { mm } from './dice.js';
import { betweenParts } from './measure.js';
import { Workshop } from './workshop.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await Workshop.open();
});
afterAll(() => shop.sweepUp());

const length = (least: number, most: number) =>
  fc.integer({ min: least * 1000, max: most * 1000 }).map((thousandths) => thousandths / 1000);

/** A five-sided unit for a corner, and a block that stands somewhere about its turned front. */
const units = fc.record({
  cantWidth: length(180, 420),
  cantDepth: length(180, 420),
  along: length(0, 1),
  before: length(-60, 60),
});

const sizesOf = ({ message }: Finding): readonly number[] =>
  message.flatMap((piece) =>
    typeof piece === 'string' ? [] : [piece instanceof Rational ? piece.toNumber() : piece.value],
  );

it('turned parts take up just the room that meshes of them do', () => {
  let [met, clear, compared] = [0, 0, 0];
  fc.assert(
    fc.property(units, ({ cantWidth, cantDepth, along, before }) => {
      // A point of the cant's line, from its end at the front, and so far before it toward the corner that is gone.
      const steep = Math.hypot(cantWidth, cantDepth);
      const x = 700 - cantWidth + along * cantWidth + (before * cantDepth) / steep;
      const y = along * cantDepth - (before * cantWidth) / steep;
      const spec = cornerUnit({ cantWidth: mm(cantWidth), cantDepth: mm(cantDepth) })
        .part('block', 'upright')
        .of('height', 80, 'block')
        .of('depth', 30, 'block')
        .place('block', at('left', mm(x), 'right of', 'base.left'))
        .place('block', at('front', mm(y), 'behind', 'base.front'))
        .place('block', at('bottom', 200, 'above', 'base.bottom'))
        .build();
      const { fit, findings } = fitSpec(spec);
      expect(fit.parts.find(({ id }) => id === 'front')?.turn).toBeDefined();
      const told = new Map(
        findings
          .filter(({ code }) => code === 'parts-overlap')
          .map((finding) => [[...(finding.about.parts ?? [])].sort().join('|'), sizesOf(finding)]),
      );
      try {
        for (const measured of betweenParts(shop, fit, fit.parts)) {
          const sizes = told.get(measured.key);
          if (measured.certain(LET_PASS)) expect(sizes !== undefined, measured.key).toBe(measured.fails);
          if (measured.fails) met += 1;
          else clear += 1;
          if (!sizes || !measured.fails) continue;
          sizes.forEach((size, i) => {
            expect(Math.abs(size - (measured.figures[i] as number)), measured.key).toBeLessThan(2 * LET_PASS);
          });
          compared += 1;
        }
      } finally {
        shop.sweepUp();
      }
    }),
    fixedFirst({ fixed: 50, numRuns: 60 }, units),
  );
  expect(met).toBeGreaterThan(10);
  expect(clear).toBeGreaterThan(10);
  expect(compared).toBeGreaterThan(10);
});
