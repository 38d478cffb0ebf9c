import { type Box, countConnectors, type FitResult, type FittedJoint, glueAreas, isGlued } from '@dryfit/engine';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { examineText } from '../support/read.js';
import type { Vector } from '../support/vectors.js';
import { corners } from './meshes.js';
import { Workshop } from './workshop.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await Workshop.open();
});
afterAll(() => shop.sweepUp());

/** How far a part is let grow into what it touches, mm. */
const GROWN = 2 ** -8;
const grown = (at: Vector, by: number): Vector => [at[0] + by, at[1] + by, at[2] + by];
const boxMesh = (box: Box, by = 0) => {
  const [lo, hi] = corners(box);
  return shop.box(grown(lo, -by), grown(hi, by));
};

/** Where the two parts of a joint touch, by how much of the host a part takes up that is let grow a little; mm². */
function touching({ fit }: FitResult, joint: FittedJoint): { readonly area: number; readonly round: number } {
  const [entering, host] = [joint.entering, joint.host].map((id) => fit.parts.find((part) => part.id === id));
  if (!entering?.box || !host?.box) return { area: 0, round: 0 };
  let wood = boxMesh(host.box);
  for (const cut of host.cuts)
    if ('box' in cut && (cut.kind === 'notch' || cut.joint === joint.statement))
      wood = shop.keep(wood.subtract(boxMesh(cut.box)));
  const own = entering.cuts.reduce(
    (left, cut) => ('box' in cut && cut.kind === 'notch' ? shop.keep(left.subtract(boxMesh(cut.box, -GROWN))) : left),
    boxMesh(entering.box, GROWN),
  );
  const [lo, hi] = corners(entering.box);
  // What it grows beside the face, all round.
  const round = 4 * GROWN * (hi[0] - lo[0] + hi[1] - lo[1] + hi[2] - lo[2]) + 1;
  return { area: shop.keep(wood.intersect(own)).volume() / GROWN, round };
}

const isFlat = ({ meeting, turn, verb }: FittedJoint): boolean => meeting !== 'mitre' && !turn && verb !== 'groove';

/** The glue lines of one joint as the engine has them, connectors aside, mm². */
const facesOf = (result: FitResult, joint: FittedJoint): number =>
  glueAreas({ joints: [joint], parts: result.fit.parts }, { materials: new Map() }).faces.toNumber();

describe('glue lines beside meshes', () => {
  test('faces of parts that touch are as large as their meshes touch', async () => {
    let [checked, large] = [0, 0];
    await fc.assert(
      fc.asyncProperty(plans, async (plan) => {
        const { results } = await examineText(write(plan, {}));
        for (const result of results)
          for (const joint of result.fit.joints.filter(isGlued).filter(isFlat)) {
            const { area, round } = touching(result, joint);
            const faces = facesOf(result, joint);
            const notched = result.fit.parts.some(
              ({ cuts, id }) => [joint.entering, joint.host].includes(id) && cuts.some(({ kind }) => kind === 'notch'),
            );
            expect(faces, joint.id).toBeLessThanOrEqual(area + round);
            // Beside a notch the face is taken no longer than it is whole across.
            if (!notched) expect(faces, joint.id).toBeGreaterThanOrEqual(area - round);
            checked++;
            if (faces > 100 * round) large++;
          }
        shop.sweepUp();
      }),
      fixedFirst({ fixed: 20, numRuns: 40 }, plans),
    );
    expect(checked).toBeGreaterThan(100);
    expect(large).toBeGreaterThan(60);
  });

  test.each([
    ['rebate', 'lap 9', ''],
    ['house', 'depth 6', ''],
    ['house', 'depth 6  clearance 1', ''],
  ])('a panel let in by a %s, %s', async (verb, cut) => {
    const { results } = await examineText(`units mm
import "shop.joinery"
cabinet Box {
  part lh, rh : upright of birch18
  part shelf : level of birch18
  width 400 over lh and rh
  height 300 of lh, rh
  depth 320 of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  ${verb} shelf between lh and rh { ${cut}  ${verb === 'rebate' ? 'flush top, rear' : 'bottom 100 above lh.bottom  flush rear'}  flush front }
}
`);
    const [result] = results as [FitResult];
    expect(result.fit.joints).toHaveLength(2);
    for (const joint of result.fit.joints) {
      const { area, round } = touching(result, joint);
      expect(area).toBeGreaterThan(320 * 9);
      expect(Math.abs(facesOf(result, joint) - area)).toBeLessThan(round);
    }
    shop.sweepUp();
  });

  test('what is said not to be glued is left out, and a groove that is said to be is in', async () => {
    const text = (how: string) => `units mm
import "shop.joinery"
cabinet Box {
  part lh, rh : upright of birch18
  part back : facing of ply6
  part shelf : level of birch18
  width 400 over lh and rh
  height 300 of lh, rh, back
  depth 320 of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  back.bottom flush with lh
  groove back between lh and rh { rear set back 16 from lh  depth 8  clearance 0.5  ${how} }
  butt shelf between lh and rh { bottom 100 above lh.bottom  flush front  rear against back.groove.front  connect none "pinned" }
}
`;
    const areas = async (how: string) => {
      const [result] = (await examineText(text(how))).results as [FitResult];
      expect(countConnectors(result.fit)).toEqual([]);
      return glueAreas(result.fit, result.spec.shop).faces.toString();
    };
    expect([await areas(''), await areas('connect none "not glued"')]).toEqual(['0', '0']);
    // Two walls of each groove, 7.5 deep along 300; its bottom is 0.5 away.
    expect(await areas('connect none "glued"')).toBe(String(2 * 2 * 7.5 * 300));
  });
});
