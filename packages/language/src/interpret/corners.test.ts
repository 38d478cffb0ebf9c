import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../testing/files.fixture.js';

const shop = readFileSync(new URL('../../../../examples/shop.joinery', import.meta.url), 'utf8');

const examine = (items: string) =>
  new FilesInMemory({
    'shop.joinery': shop,
    'a.joinery': `import "shop.joinery"\ncabinet Stand {\n${items}\n}\n`,
  }).examine('a.joinery');

describe('cants as they are read', () => {
  test('each leg belongs to its extent, whichever side is named first, and a part may be declared before what it stands on', async () => {
    const { cabinets } = await examine(`
      part face : facing of birch18 on base.cant grain width
      part base : level of birch18
      cant base at right front { depth 200  width 300 }`);
    const spec = cabinets[0]?.spec;
    expect(spec?.parts.map(({ id, on, grain }) => [id, on?.part, grain])).toEqual([
      ['face', 'base', 'width'],
      ['base', undefined, undefined],
    ]);
    const cant = spec?.statements.find(({ kind }) => kind === 'cant');
    expect(cant?.kind === 'cant' && cant.corner).toEqual(['right', 'front']);
    expect(cant?.kind === 'cant' && cant.legs.map(({ dimension, length }) => `${dimension} ${length.value}`)).toEqual([
      'depth 200',
      'width 300',
    ]);
    expect(cant?.id).toBe('cant base at right front');
  });

  test('its words may still be names', async () => {
    const { cabinets } = await examine(`
      part cant, on : level of birch18
      width 300 of cant, on
      cant.left flush with on`);
    expect(cabinets[0]?.spec.parts.map(({ id }) => id)).toEqual(['cant', 'on']);
    expect(cabinets[0]?.spec.statements).toHaveLength(2);
  });

  test.each([
    ['no second size', 'cant base at front right { width 300 }', 'setting-missing'],
    ['a size through the thickness', 'cant base at front right { width 300  depth 300  height 20 }', 'wrong-side'],
    ['one size twice', 'cant base at front right { width 300  width 200 }', 'written-twice'],
    ['sides that do not meet', 'cant base at front rear { width 300  depth 200 }', 'wrong-side'],
    ['a plane it has not', 'part face : facing of birch18 on base.cant\nbutt face to base.cant', 'no-such-plane'],
    ['a part that is not there', 'part face : facing of birch18 on bse.cant', 'unknown-name'],
  ])('%s is told', async (_, line, code) => {
    const { findings } = await examine(`part base : level of birch18\n${line}`);
    expect(findings.map((finding) => finding.code)).toContain(code);
  });
});

describe('several notches of one part', () => {
  /** A side with its plinth notched out in front and its skirting behind, each to a size of its own. */
  const SIDE = `
    part side, other : upright of birch18
    part base : level of birch18
    height 430 of side, other
    depth 380 of side, other
    width 600 over side and other
    notch side, other at front bottom { depth 40  height 90 }
    notch side, other at bottom rear { depth 22  height 110 }
    butt base between side and other {
      bottom 120 above side.bottom
      flush front, rear
      connect none "glued"
    }
    other.bottom flush with side
    other.rear flush with side`;

  test('each has its own size, and the same corner may be named either way round', async () => {
    const { cabinets, findings } = await examine(SIDE);
    expect(findings.map(({ code, source }) => [code, source.start])).toEqual([]);
    const side = cabinets[0]?.fit.parts.find(({ id }) => id === 'side');
    const boxes = side?.cuts.flatMap((cut) => (cut.kind === 'notch' ? [cut.box] : []));
    const [y, z] = [side?.box?.lo.y.toNumber() ?? Number.NaN, side?.box?.lo.z.toNumber() ?? Number.NaN];
    expect(boxes?.map(({ lo, hi }) => [lo.y, hi.y, lo.z, hi.z].map((at) => at.toNumber()))).toEqual([
      [y, y + 40, z, z + 90],
      [y + 380 - 22, y + 380, z, z + 110],
    ]);
  });

  test('a wall that only one of them has may be named; one that both have is not taken for either', async () => {
    const kick = (plane: string) =>
      `${SIDE}\npart kick : facing of birch18\nheight 60 of kick\nbutt kick between side and other { front flush with ${plane}  bottom flush with side  connect none "glued" }`;
    const { cabinets, findings } = await examine(kick('side.notch.front'));
    expect(findings.map(({ code }) => code)).toEqual([]);
    const [side, board] = ['side', 'kick'].map((id) => cabinets[0]?.fit.parts.find((part) => part.id === id));
    expect(board?.box?.lo.y.toNumber()).toBe((side?.box?.lo.y.toNumber() ?? Number.NaN) + 40);
    const both = kick('side.notch.front').replace('height 60 of', 'height 60 from side.bottom to side.notch.bottom //');
    const told = (await examine(both)).findings.filter(({ code }) => code === 'no-such-plane');
    expect(told.map(({ message }) => message.join(''))).toEqual([
      'side has 2 notches cut in from its bottom, and side.notch.bottom may be the wall of any of them',
    ]);
  });

  test('two sizes for one corner do not agree', async () => {
    const { findings } = await examine(`${SIDE}\nnotch side at bottom front { depth 40  height 80 }`);
    expect(findings.map(({ code }) => code)).toContain('does-not-close');
  });
});
