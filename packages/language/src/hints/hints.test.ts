import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { isCabinet } from '../generated/ast.js';
import { FilesInMemory } from '../testing/files.fixture.js';
import type { HintKinds } from './hint.js';
import { hintsOf } from './hints.js';

const read = (name: string) => readFileSync(new URL(`../../../../examples/${name}.joinery`, import.meta.url), 'utf8');
const ALL: HintKinds = { sizes: true, spacers: true, slotCounts: true };
const NONE: HintKinds = { sizes: false, spacers: false, slotCounts: false };

/** A text with its hints in it as ‹…›, and how often a fit was asked for. */
async function hinted(text: string, kinds = ALL, within = { start: 0, end: text.length }) {
  const memory = new FilesInMemory({ 'desk.joinery': text, 'shop.joinery': read('shop') });
  const { value: file } = (await memory.open('desk.joinery')).parseResult;
  let asked = 0;
  const hints = [
    ...hintsOf(file, within, kinds, (cabinet) => {
      asked += 1;
      return { result: memory.services.joinery.joinery.Fits.of(cabinet).result, stale: false };
    }),
  ];
  const shown = hints.reduceRight(
    (out, { offset, label }) => `${out.slice(0, offset)}‹${label}›${out.slice(offset)}`,
    text,
  );
  return { hints, asked, shown, cabinets: file.entries.filter(isCabinet).length };
}

const linesWith = (shown: string): string[] =>
  shown
    .split('\n')
    .filter((line) => line.includes('‹'))
    .map((line) => line.trim().replace(/\s+/g, ' '));

describe('hints', () => {
  test('of the periodicals base give the sizes worked by hand', async () => {
    const { shown } = await hinted(read('periodicals'));
    expect(linesWith(shown)).toEqual([
      'part lh, rh : upright of birch18‹17.7 × 560 × 720›',
      'part top, base : level of birch18‹564.6 × 560 × 17.7›',
      'part shelf : level of birch18‹564.6 × 538 × 17.7›',
      'part back : facing of ply6‹579.6 × 5.8 × 699.6›',
      'butt top between lh and rh‹5 slots each half› { flush top, rear, front‹depth 560› }',
      'butt base between lh and rh‹5 slots each half› { flush bottom, rear, front‹depth 560› }',
      'butt shelf between lh and rh‹5 slots each half› {',
      'rear against back.groove.front‹spacer 22 = 12 + 10›',
    ]);
  });

  test('give the reasons when asked', async () => {
    const { hints } = await hinted(read('periodicals'));
    const why = (label: string) => hints.find((hint) => hint.label === label)?.why() ?? '';
    expect(why('564.6 × 538 × 17.7')).toMatch(/depth.*538[\s\S]*rear against back\.groove\.front/);
    expect(why('spacer 22 = 12 + 10')).toContain('shelf / lh');
  });

  test('tell how far apart things come out that are only said to be equal', async () => {
    const text = `import "shop.joinery"
cabinet A {
  part lh, rh : upright of birch18
  part mid : upright of birch18
  part base, top : level of birch18
  parts shelf 1 to 2 : level of birch18
  width 600 over lh and rh
  height 700 of lh
  depth 300 of lh
  connect none "glued"
  butt base between lh and rh { flush bottom, rear, front }
  butt top between lh and rh { flush top, rear, front }
  butt mid between base and top {
    centred between lh and rh
    flush rear, front
  }
  butt shelf between lh and mid {
    openings equal between base.top and top.bottom
    flush rear, front
  }
}`;
    const { shown } = await hinted(text);
    // (600 − 3 × 17.7) / 2 and (700 − 4 × 17.7) / 3
    expect(linesWith(shown)).toContain('centred between lh and rh‹273.45 each side›');
    expect(linesWith(shown)).toContain('openings equal between base.top and top.bottom‹3 of ≈209.73›');
  });

  test('tell how long a part is that is flush at both ends, if all of them are', async () => {
    const { shown, hints } = await hinted(`import "shop.joinery"
cabinet A {
  part lh, rh : upright of birch18
  part base, rail : level of birch18
  width 600 over lh and rh
  height 700 of lh
  depth 300 of lh
  connect none "glued"
  butt base between lh and rh { flush bottom, rear, front }
  butt rail between lh and rh { flush top, rear }
  depth 80 of rail
}`);
    const flush = linesWith(shown).filter((line) => line.includes('flush'));
    expect(flush).toEqual(['butt base between lh and rh { flush bottom, rear, front‹depth 300› }']);
    expect(hints.find(({ label }) => label === 'depth 300')?.why()).toContain('depth of base: 300 mm');
  });

  test('that are turned off ask for no fit', async () => {
    const text = read('periodicals');
    expect(await hinted(text, NONE)).toMatchObject({ hints: [], asked: 0 });
    for (const kind of ['sizes', 'spacers', 'slotCounts'] as const) {
      const { hints, asked } = await hinted(text, { ...NONE, [kind]: true });
      expect(hints.length).toBeGreaterThan(0);
      expect(asked).toBe(1);
    }
  });

  test('are those in sight only, and what is out of sight is not worked out', async () => {
    const text = `${read('periodicals')}\n${read('bookcase').replace(/import.*|units.*/g, '')}`;
    const line = text.indexOf('part shelf ');
    const { hints, asked, cabinets } = await hinted(text, ALL, { start: line, end: line + 40 });
    expect(cabinets).toBe(2);
    expect(asked).toBe(1);
    expect(hints.map(({ label }) => label)).toEqual(['564.6 × 538 × 17.7']);
    const job = text.indexOf('job Library');
    expect(await hinted(text, ALL, { start: job, end: job + 5 })).toMatchObject({ hints: [], asked: 0 });
  });

  test('of what nothing fixes say so', async () => {
    const { shown } = await hinted('import "shop.joinery"\ncabinet A { part a : level of birch18 }');
    expect(shown).toContain('‹? × ? × 17.7›');
  });
});
