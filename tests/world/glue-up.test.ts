import { type Fit, type GlueStep, glueUp } from '@dryfit/engine';
import { glueUpSheet } from '@dryfit/output';
import { describe, expect, it } from 'vitest';
import { blocking } from '../../packages/engine/src/assembly/blocking.js';
import { assemblyOf } from '../../packages/engine/src/assembly/build.js';
import { exampleText } from '../support/examples.js';
import { examineText } from '../support/read.js';

// Cases whose order every cabinet shop knows: common practice, no source, unless one is named beside the case.

async function fitOf(text: string): Promise<Fit> {
  const { results } = await examineText(text);
  const fit = results[0]?.fit;
  if (!fit) throw new Error('there is no cabinet');
  return fit;
}

const cabinet = (body: string): Promise<Fit> => fitOf(`import "shop.joinery"\n\ncabinet Case {\n${body}\n}\n`);

const SIDES = `
  part lh, rh    : upright of birch18
  part top, base : level of birch18
  width 600 over lh and rh
  height 720 of lh, rh
  depth 400 of lh, rh
  connect biscuit20 by lines 80, 160, 240, 320
  butt top between lh and rh { flush top, rear, front }
  butt base between lh and rh { flush bottom, rear, front }
`;

/** The number of the last step that a part comes in by itself or with others. */
const comesIn = (steps: readonly GlueStep[], part: string): number =>
  Math.max(0, ...steps.filter(({ coming }) => coming.some(({ parts }) => parts.includes(part))).map((s) => s.number));

const WAYS = {
  'to the right': [1, 0, 0],
  'to the left': [-1, 0, 0],
  'to the rear': [0, 1, 0],
  'to the front': [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
} as const;

/** The ways in which one part can come when all others are together. */
function waysIn(fit: Fit, part: string): string[] {
  const { assembly } = assemblyOf(fit);
  const all = assembly.items.map((_, i) => i);
  const own = assembly.items.findIndex(({ id }) => id === part);
  return Object.entries(WAYS)
    .filter(([, [x, y, z]]) => blocking(assembly, all, [-x || 0, -y || 0, -z || 0])[own]?.length === 0)
    .map(([words]) => words);
}

describe('glue-up', () => {
  it('a back captured in four grooves goes in before the last side', async () => {
    const fit = await fitOf(exampleText('periodicals.joinery'));
    const { steps, stuck } = glueUp(fit);
    expect(stuck).toEqual([]);
    expect(waysIn(fit, 'back')).toEqual([]);
    expect(comesIn(steps, 'back')).toBeLessThan(steps.length);
    expect(steps.at(-1)?.coming.flatMap(({ parts }) => parts)).toEqual(['rh']);
  });

  it('the last corners of a mitred frame are drawn together', async () => {
    const fit = await cabinet(`
      part lh, rh    : upright of birch18
      part top, base : level of birch18
      width 380 over lh and rh
      height 400 of lh, rh
      depth 300 of lh, rh
      connect biscuit10 by lines 80, 220
      mitre top between lh and rh { outer top  flush rear, front  at 17.5 from reference }
      mitre base between lh and rh { outer bottom  flush rear, front  at 17.5 from reference }
    `);
    const { steps, stuck } = glueUp(fit);
    expect(stuck).toEqual([]);
    // Two corners on their own, and the other two at the same time, across the frame.
    expect(steps.map(({ joints }) => joints.length)).toEqual([1, 1, 2]);
    expect(steps.at(-1)?.together.map((list) => list.length)).toEqual([2]);
    const way = steps.at(-1)?.coming[0]?.legs[0]?.way ?? [0, 0, 0];
    expect([Math.abs(way[0]) === Math.abs(way[2]), way[0] !== 0, way[1]]).toEqual([true, true, 0]);
  });

  it('a mitred case with a floor closes all at once', async () => {
    const fit = await fitOf(exampleText('display-plinth.joinery'));
    const { steps, stuck } = glueUp(fit);
    expect(stuck).toEqual([]);
    const last = steps.at(-1);
    expect(last?.allMove).toBe(true);
    expect(last?.joints).toEqual(expect.arrayContaining(['top / lh', 'top / rh', 'floor / rh']));
  });

  it('a board that stands turned closes square to its mitres, at half the turn from its neighbours', async () => {
    const fit = await fitOf(exampleText('corner-plinth.joinery'));
    const { steps, stuck } = glueUp(fit);
    expect(stuck).toEqual([]);
    const angle = (joint: string): number => {
      const legs = steps.find(({ joints }) => joints.includes(joint))?.coming[0]?.legs;
      const [x, y] = legs?.[0]?.way ?? [0, 0, 0];
      // Either of the two may be what comes: the line it moves on is the same.
      return ((Math.atan2(y, x) * 180) / Math.PI + 180) % 180;
    };
    // The stub runs along x, the face at 45° to it, the end along y.
    expect(angle('face / stub')).toBeCloseTo(22.5, 6);
    expect(angle('face / end')).toBeCloseTo(67.5, 6);
    // The top and the base take all five sides between them, so that one of them comes last.
    expect(steps.at(-1)?.joints).toHaveLength(5);
  });

  it('a divider goes between its shelves before the sides close them in', async () => {
    const fit = await cabinet(`${SIDES}
      part low, high : level of birch18
      part divider   : upright of birch18
      butt low between lh and rh { bottom 200 above lh.bottom  flush rear, front }
      butt high between lh and rh { bottom 460 above lh.bottom  flush rear, front }
      butt divider between low and high { centred between lh and rh  flush rear, front  reference left }
    `);
    const { steps, stuck } = glueUp(fit);
    expect(stuck).toEqual([]);
    expect(waysIn(fit, 'divider')).toEqual([]);
    const closed = steps.filter(({ joints }) => joints.some((id) => id.startsWith('divider / '))).map((s) => s.number);
    const sides = ['lh', 'rh'].map((side) =>
      Math.max(...steps.filter(({ joints }) => joints.some((id) => id.endsWith(` / ${side}`))).map((s) => s.number)),
    );
    expect(Math.max(...closed)).toBeLessThan(Math.min(...sides));
  });

  it('a shelf in through housings comes in from front or rear; in housings that stop at its front, from the rear only', async () => {
    const housed = (front: string) => `${SIDES}
      part shelf : level of birch18
      house shelf between lh and rh { bottom 300 above lh.bottom  flush rear  ${front}  depth 6 }
    `;
    expect(waysIn(await cabinet(housed('flush front')), 'shelf')).toEqual(['to the rear', 'to the front']);
    expect(waysIn(await cabinet(housed('front set back 18 from lh')), 'shelf')).toEqual(['to the front']);
  });

  it('a shelf in stopped housings goes in before the second side', async () => {
    const fit = await cabinet(`${SIDES}
      part shelf : level of birch18
      house shelf between lh and rh { bottom 300 above lh.bottom  rear set back 20 from lh  front set back 20 from lh  depth 6  stopped 20 }
    `);
    expect(waysIn(fit, 'shelf')).toEqual([]);
    const { steps, stuck } = glueUp(fit);
    expect(stuck).toEqual([]);
    expect(comesIn(steps, 'shelf')).toBeLessThan(steps.length);
    const last = steps.at(-1);
    expect(last?.together.flat()).toContain('shelf / rh');
  });

  it('a face frame is put together from its middle outward', async () => {
    const fit = await cabinet(`
      part stileL, stileR, mid : facing of birch18
      part railT, railB        : facing of birch18
      width 600 over stileL and stileR
      height 700 of stileL, stileR
      width 60 of stileL, stileR, mid
      height 60 of railT, railB
      connect tenon8 by lines 20
      butt railT between stileL.right and stileR.left { flush top, front  reference front  datum top  allow joint-can-rotate "glued along its length" }
      butt railB between stileL.right and stileR.left { flush bottom, front  reference front  datum bottom  allow joint-can-rotate "glued along its length" }
      butt mid between railB.top and railT.bottom { centred between stileL and stileR  flush front  reference front  datum left  allow joint-can-rotate "glued along its length" }
    `);
    const { steps, stuck } = glueUp(fit);
    expect(stuck).toEqual([]);
    const with_ = (word: string) =>
      steps.filter(({ joints }) => joints.some((id) => id.includes(word))).map((s) => s.number);
    expect(Math.max(...with_('mid / '))).toBeLessThan(Math.min(...with_('stile')));
  });

  it('a drawer bottom in grooves all round goes in before the heel; under a higher heel it slides in last', async () => {
    const bin = await fitOf(exampleText('returns-bin.joinery'));
    expect(waysIn(bin, 'tray')).toEqual([]);
    expect(comesIn(glueUp(bin).steps, 'tray')).toBeLessThan(glueUp(bin).steps.length);
    const drawer = await cabinet(`
      part lh, rh     : upright of birch18
      part face, heel : facing of birch18
      part tray       : level of ply6
      width 400 over lh and rh
      height 120 of lh, rh, face
      depth 380 of lh, rh
      connect tenon8 by lines 30, 90
      butt face between lh and rh { flush bottom, front  reference front  datum bottom }
      butt heel between lh and rh { flush top, rear  reference rear  datum top  connect tenon8 by lines 30, 70 }
      heel.bottom against tray.top
      groove tray between lh and rh { bottom 12 above lh.bottom  rear flush with lh  width 6  depth 6  clearance 0.5 }
      groove tray to face.rear { depth 6  clearance 0.5 }
    `);
    expect(waysIn(drawer, 'tray')).toEqual(['to the front']);
  });

  it('a nailer and rails go in before the second side', async () => {
    const fit = await fitOf(exampleText('rail-base.joinery'));
    const { steps, stuck } = glueUp(fit);
    expect(stuck).toEqual([]);
    for (const rail of ['nailer', 'frontrail', 'rearrail', 'kick']) expect(waysIn(fit, rail)).toEqual([]);
    const last = steps.at(-1);
    expect(last?.together[0]).toEqual(expect.arrayContaining(['nailer / rh', 'frontrail / rh', 'rearrail / rh']));
  });

  it('a rebated back comes on last, from the rear', async () => {
    const fit = await cabinet(`${SIDES}
      part back : facing of ply6
      rebate back between lh and rh { flush rear  lap 9  depth 6 }
      back.bottom flush with lh
      back.top flush with lh
    `);
    expect(waysIn(fit, 'back')).toContain('to the front');
    expect(glueUp(fit).stuck).toEqual([]);
  });

  it('three boards that hold each other in three ways go together in no order', async () => {
    const { results, findings } = await examineText(
      exampleText('broken/cannot-be-assembled.joinery').replace('../', ''),
    );
    const fit = results[0]?.fit as Fit;
    expect(findings.map(({ code }) => code)).toContain('cannot-be-assembled');
    const [stuck] = glueUp(fit).stuck;
    expect(stuck?.proven).toBe(true);
    expect(stuck?.parts).toHaveLength(3);
    expect(stuck?.parts).toEqual(expect.arrayContaining(['top', 'back']));
    expect(stuck?.freeing.every(({ by }) => by === 'connectors')).toBe(true);
  });

  it('a loose shelf needs no order', async () => {
    const fit = await cabinet(`${SIDES}
      part loose : level of birch18
      rest loose between lh and rh { bottom 300 above lh.bottom  flush rear, front }
    `);
    const order = glueUp(fit);
    expect(order.loose).toEqual(['loose']);
    expect(order.steps.flatMap(({ coming, onto }) => [...onto, ...coming.flatMap(({ parts }) => parts)])).not.toContain(
      'loose',
    );
  });
});

describe('while glue stays open', () => {
  // Of the right side three joints are glued when it comes, and its groove takes in the back.
  const cased = (back: string) =>
    examineText(`import "shop.joinery"
limits { glue open 3 min  joint closed in 1 min }
cabinet Case {
${SIDES}
  part shelf : level of birch18
  part back  : facing of ply6
  groove back between lh and rh, base and top { rear set back 16 from lh  depth 8  width 6  clearance 0.5 ${back} }
  butt shelf between lh and rh { bottom 350 above base.bottom  rear against back.groove.front  flush front }
}
`);

  it('no glue waits for a panel that slides dry into its groove', async () => {
    const { findings, results } = await cased('');
    expect(findings.map(({ code }) => code)).toEqual([]);
    const [result] = results;
    const facts = result ? glueUpSheet(result).steps.map(({ facts: list }) => Object.fromEntries(list)) : [];
    expect(facts.filter(({ joints }) => joints?.includes('back /')).length).toBeGreaterThan(0);
    for (const { joints, glue } of facts) {
      const glued = joints?.split(', ').filter((joint) => !joint.startsWith('back /')) ?? [];
      expect(glue).toBe(glued.length > 0 ? `${glued.length} of the 3 min it stays open` : undefined);
    }
  });

  it('a panel glued into its groove takes its time', async () => {
    expect((await cased('connect none "glued"')).findings.map(({ code }) => code)).toContain('glue-sets-first');
  });
});
