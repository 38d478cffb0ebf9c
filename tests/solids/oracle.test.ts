import type { Finding } from '@dryfit/engine';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import type { Plan } from './assemblies.js';
import { compare, type Outcome } from './compare.js';
import { plans } from './plans.js';
import { count, emptyTally, KINDS } from './tally.js';
import { Workshop } from './workshop.js';

/** How many assemblies are tried: 300 unless `CLASH_CASES` asks for more. */
const CASES = Number(process.env.CLASH_CASES ?? 300);
/** So many of them are the same every time, so that what is counted does not hang on chance. */
const FIXED = Math.ceil(CASES / 2);

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
      fixedFirst({ fixed: FIXED, numRuns: CASES }, plans),
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
    const enough = FIXED / 40;
    expect(tally.found[kind]).toBeGreaterThanOrEqual(enough);
    expect(tally.notFound[kind]).toBeGreaterThanOrEqual(enough);
  });
});

describe('the comparison itself', () => {
  let some: readonly { readonly plan: Plan; readonly kinds: Outcome['kinds'] }[];
  beforeAll(() => {
    some = fc.sample(plans, { seed: 1, numRuns: 120 }).map((plan) => ({ plan, kinds: compare(shop, plan).kinds }));
  });

  it.each(KINDS)('notices where %s is not told', (kind) => {
    const deaf = (findings: readonly Finding[]) => findings.filter(({ code }) => !silenced(kind).includes(code));
    const told = some.filter(({ kinds }) => kinds.get(kind));
    expect(told.some(({ plan }) => compare(shop, plan, deaf).faults.length > 0)).toBe(true);
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
