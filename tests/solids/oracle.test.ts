import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compare } from './compare.js';
import { plans } from './plans.js';
import { count, emptyTally, KINDS } from './tally.js';
import { Workshop } from './workshop.js';

/** How many assemblies are tried: 300 unless `CLASH_CASES` asks for more. */
const CASES = Number(process.env.CLASH_CASES ?? 300);

let shop: Workshop;
beforeAll(async () => {
  shop = await Workshop.open();
});
afterAll(() => shop.sweepUp());

describe(`${CASES} assemblies beside meshes of them`, () => {
  const tally = emptyTally();

  it('agree in verdict and in millimetres, unless within 0.02 mm of the limit', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const outcome = compare(shop, plan);
        count(tally, outcome, shop.chordError);
        expect(outcome.faults).toEqual([]);
      }),
      { numRuns: CASES },
    );
    expect(tally.cases).toBe(CASES);
    // Where nothing could be told for certain, agreement would mean nothing.
    expect(tally.open).toBeLessThan(0.1 * CASES);
  });

  it('lie near a limit often enough', () => {
    expect(tally.near).toBeGreaterThanOrEqual(0.4 * CASES);
  });

  it('are meshed finely enough', () => {
    expect(tally.chordError).toBeGreaterThan(0);
    expect(tally.chordError).toBeLessThanOrEqual(0.005);
  });

  it.each(KINDS)('have %s and are free of it often enough', (kind) => {
    const enough = (50 * CASES) / 2000;
    expect(tally.found[kind]).toBeGreaterThanOrEqual(enough);
    expect(tally.notFound[kind]).toBeGreaterThanOrEqual(enough);
  });
});

describe('the comparison itself', () => {
  it.each(KINDS)('notices where %s is not told', (kind) => {
    let noticed = 0;
    for (const plan of fc.sample(plans, { seed: 1, numRuns: 120 })) {
      const told = compare(shop, plan).kinds.get(kind);
      if (!told) continue;
      const deaf = compare(shop, plan, (findings) => findings.filter(({ code }) => !silenced(kind).includes(code)));
      noticed += deaf.faults.length > 0 ? 1 : 0;
    }
    expect(noticed).toBeGreaterThan(0);
  });

  it('notices where a measure is told wrong', () => {
    const wrong = fc.sample(plans, { seed: 2, numRuns: 60 }).flatMap(
      (plan) =>
        compare(shop, plan, (findings) =>
          findings.map((finding) => ({
            ...finding,
            message: finding.message.map((piece) =>
              typeof piece === 'object' && 'error' in piece ? { ...piece, value: piece.value + 0.1 } : piece,
            ),
          })),
        ).faults,
    );
    expect(wrong.length).toBeGreaterThan(0);
  });
});

/** A connector that is too long or too wide is told by two other names as well. */
const silenced = (kind: string): readonly string[] =>
  kind === 'connector-binds' ? [kind, 'connector-too-long', 'joint-bottoms-out'] : [kind];
