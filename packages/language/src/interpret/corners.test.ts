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
