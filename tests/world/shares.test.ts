import { Rational, reasonWords, render } from '@dryfit/engine';
import { expect, test } from 'vitest';
import { fitText } from '../support/read.js';

const RACK = `import "shop.joinery"
cabinet Rack {
  part lh, rh    : upright of birch18
  part top, base : level of birch18
  parts shelf 1 to 2 : level of birch18
  parts low 1 to 2   : upright of birch18
  width 700 over lh and rh
  height 701 of lh
  depth 300 of lh
  connect none "glued"
  butt top between lh and rh { flush top, rear, front }
  butt base between lh and rh { flush bottom, rear, front }
  butt shelf between lh and rh {
    openings equal between base.top and top.bottom
    flush rear, front
  }
  butt low between base and shelf 1 {
    openings equal between lh.right and rh.left
    flush rear, front
  }
}
`;

test('where even openings add a share of a length, the reason says which share of which length', async () => {
  const result = await fitText(RACK);
  for (const [part, axis, whole] of [
    ['low 1', 'z', '1/3 of 701'],
    ['low 2', 'z', '1/3 of 701'],
  ] as const) {
    const reasons = result.reasons(part, axis);
    const extent = result.fit.parts.find(({ id }) => id === part)?.extent[axis];
    expect(String(Rational.sum(reasons.map(({ adds }) => adds)))).toBe(String(extent));
    const shared = reasons.filter(({ share }) => share);
    expect(shared.length).toBeGreaterThan(1);
    for (const { share, adds } of shared) expect(share?.part.mul(share.of).equals(adds.abs())).toBe(true);
    const told = shared.map((reason) => render(reasonWords(reason), { units: 'mm' }));
    expect(told).toContain(`height 701 of lh (${whole})`);
    expect(told.filter((words) => words.endsWith('(1/3 of 17.7)')).length).toBe(4);
  }
  // A length that is added whole says no more than it did.
  const [width] = result.reasons('top', 'x').filter(({ text }) => text.startsWith('width 700'));
  expect(width && render(reasonWords(width), { units: 'mm' })).toBe('width 700 over lh and rh');
});
