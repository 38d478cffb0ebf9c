import fc from 'fast-check';
import { type CaseRecipe, caseOf } from './case.js';
import { type FrameRecipe, frameOf } from './frame.js';
import { type Plan, write } from './plan.js';
import { type StockRecipe, stockOf } from './stock.js';

const stock: fc.Arbitrary<StockRecipe> = fc.record({
  sheet: fc.integer({ min: 150, max: 250 }),
  thinner: fc.integer({ min: 0, max: 8 }),
  connector: fc.constantFrom('biscuit', 'loose tenon', 'dowel'),
  layout: fc.constantFrom('lines', 'skipping lines', 'spread', 'pitch', 'two'),
  first: fc.integer({ min: 300, max: 900 }),
  step: fc.integer({ min: 700, max: 1800 }),
  jig: fc.constantFrom('long', 'short', 'without spacers', 'none'),
  poseEdge: fc.constantFrom('down', 'up'),
  poseFace: fc.constantFrom('down', 'up'),
  base: fc.option(fc.integer({ min: 70, max: 110 }), { nil: undefined }),
});

const caseRecipe: fc.Arbitrary<CaseRecipe> = fc.record({
  wide: fc.integer({ min: 6000, max: 14_000 }),
  high: fc.integer({ min: 7000, max: 20_000 }),
  deep: fc.integer({ min: 2500, max: 6500 }),
  corner: fc.constantFrom('top between sides', 'sides between top and base', 'mitred top'),
  back: fc.oneof(
    fc.record({ kind: fc.constant('grooved' as const), setBack: fc.integer({ min: 60, max: 250 }) }),
    fc.constant({ kind: 'butted' as const }),
    fc.constant({ kind: 'none' as const }),
  ),
  divider: fc.oneof(fc.constant('none' as const), fc.constant('midway' as const), fc.integer({ min: 1000, max: 4000 })),
  heights: fc
    .uniqueArray(fc.integer({ min: 1, max: 6 }), { maxLength: 3 })
    .chain((steps) => fc.integer({ min: 0, max: 99 }).map((off) => steps.map((step) => 700 * step + off))),
  openings: fc.integer({ min: 0, max: 3 }),
  openingStep: fc.boolean(),
  shelfBack: fc.constantFrom(0, 0, 137),
  rail: fc.boolean(),
  kick: fc.boolean(),
  loose: fc.boolean(),
  bands: fc.constantFrom('none', 'before', 'after', 'unsaid'),
  across: fc.constantFrom('machine', 'centred', 'written'),
});

const frameRecipe: fc.Arbitrary<FrameRecipe> = fc.record({
  wide: fc.integer({ min: 4000, max: 12_000 }),
  high: fc.integer({ min: 4000, max: 20_000 }),
  stile: fc.integer({ min: 400, max: 900 }),
  rail: fc.integer({ min: 500, max: 1500 }),
  reference: fc.constantFrom('front', 'rear'),
  datum: fc.constantFrom('bottom', 'top'),
});

/** Cabinets whose every size follows from their statements; what is milled into them may well break a limit. */
export const plans: fc.Arbitrary<Plan> = fc
  .tuple(
    stock,
    fc.oneof({ weight: 5, arbitrary: caseRecipe.map(caseOf) }, { weight: 1, arbitrary: frameRecipe.map(frameOf) }),
  )
  .map(([shop, items]) => {
    const plan: Plan = { name: 'Random', stock: stockOf(shop), items };
    return Object.assign(plan, { [fc.toStringMethod]: () => write(plan) });
  });
