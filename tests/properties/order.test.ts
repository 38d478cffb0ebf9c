import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { digest } from '../support/digest.js';
import { fitText } from '../support/read.js';

test('the order of statements, and of facts in their braces, changes nothing', async () => {
  await fc.assert(
    fc.asyncProperty(plans, fc.integer({ min: 1, max: 1_000_000 }), async (plan, order) => {
      const one = await fitText(write(plan));
      const other = await fitText(write(plan, { order }));
      expect(digest(other)).toEqual(digest(one));
    }),
    { numRuns: 60 },
  );
});
