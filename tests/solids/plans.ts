import fc from 'fast-check';
import { aims, type Plan } from './assemblies.js';

const roll = fc.integer({ min: 0, max: 9999 });

/** Assemblies to try: two in three are aimed within half a millimetre of a limit, the rest within five. */
export const plans: fc.Arbitrary<Plan> = fc.record({
  // Crowded rows are the only ones that come near their limit in a kind of their own.
  kind: fc.constantFrom(...aims, 'crowded'),
  off: fc
    .oneof(
      { weight: 2, arbitrary: fc.integer({ min: -500, max: 500 }) },
      { weight: 1, arbitrary: fc.integer({ min: -5000, max: 5000 }) },
    )
    .map((thousandths) => thousandths / 1000),
  rolls: fc.array(roll, { minLength: 30, maxLength: 30 }),
});
