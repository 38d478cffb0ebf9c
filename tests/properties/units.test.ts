import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { digest } from '../support/digest.js';
import { fitText } from '../support/read.js';
import { inInches, inMillimetres, mixedUnits, type Spelling } from '../support/spelling.js';

// NBS Circular 572 addendum (January 1960): the inch is 25.4 mm exactly, so every length in millimetres is a fraction
// of an inch and every fraction of an inch a length in millimetres.
test('millimetres, inches and both in one sum give one cabinet', async () => {
  await fc.assert(
    fc.asyncProperty(plans, fc.integer({ min: 1, max: 1_000_000 }), async (plan, seed) => {
      const told = async (spelling: Spelling) => digest(await fitText(write(plan, { spelling })), false);
      const expected = await told(inMillimetres);
      expect(await told(inInches)).toEqual(expected);
      expect(await told(mixedUnits(seed))).toEqual(expected);
    }),
    { numRuns: 40 },
  );
});

test('9/16 in and 12.3 mm in one cabinet stay exact', async () => {
  const text = (setBack: string, plunge: string) => `units mm
material board { thickness 18 }
machine joiner { cutter 100  kerf 4  base to centre 9 }
connector plate : biscuit { along 56  across 23  thickness 4  plunge ${plunge}  by joiner }
cabinet Case {
  part lh, rh : upright of board
  part shelf : level of board
  width 600 over lh and rh
  height 700 of lh, rh
  depth 320 of lh, rh
  lh.bottom flush with rh
  lh.rear flush with rh
  butt shelf between lh and rh {
    bottom 9/16 in + 12.3 mm above lh.bottom
    rear set back ${setBack} from lh
    flush front
    connect plate by lines 80, 240
  }
}
`;
  const { fit } = await fitText(text('9/16 in', '12.3 mm'));
  const joint = fit.joints.find(({ id }) => id === 'shelf / lh');
  // 9/16 in = 14.2875 mm.
  expect(joint?.halves.map((half) => half.setback.toString())).toEqual(['1143/80', '0']);
  expect(joint?.halves.map((half) => half.slots.map((slot) => slot.fromDatum.toString()))).toEqual([
    ['5257/80', '18057/80'],
    ['80', '240'],
  ]);
  expect(joint?.halves[1]?.stop?.at.toString()).toBe('2127/80');
  expect(joint?.halves[0]?.depth.toString()).toBe('123/10');
  expect(digest(await fitText(text('14.2875', '123/254"')), false)).toEqual(
    digest(await fitText(text('9/16"', '12.3')), false),
  );
});
