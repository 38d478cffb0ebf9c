import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ConsumablesJson } from '@dryfit/output';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { root } from '../house/sources.js';
import { dryfit } from '../support/command.js';
import { exampleText } from '../support/examples.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dryfit-consumables-'));
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'shop.joinery'), example('shop'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const example = (name: string): string => exampleText(`${name}.joinery`);

/** What a file comes to, put beside a copy of the examples' shop that is changed as told. */
async function dataOf(text: string, ...args: readonly string[]): Promise<ConsumablesJson> {
  writeFileSync(join(folder, 'own.joinery'), text);
  const { code, err, out } = await dryfit('consumables', join(folder, 'own.joinery'), '--format', 'json', ...args);
  expect([code, err]).toEqual([0, '']);
  return JSON.parse(out);
}

const job = (name: string, count: number): string => `${example(name)}\njob Order {\n  ${count} of ${named(name)}\n}\n`;
const named = (name: string): string => /^cabinet (\w+)/m.exec(example(name))?.[1] ?? '';

describe('dryfit consumables', () => {
  it('counts the biscuits of the periodicals bases, and their glue, as by hand', async () => {
    const { connectors, glue } = await dataOf(example('periodicals'));
    // Two ends each of top, base and shelf, five lines in the four deep ones and three in the two shallow ones.
    expect(connectors.map(({ name, needed, spare, inAll }) => [name, needed.value, spare.value, inAll.value])).toEqual([
      ['biscuit20', 4 * 6 * 5 + 2 * 6 * 3, 8, 164],
    ]);
    expect(connectors[0]?.buy).toMatchObject({ packs: [{ text: '100', count: 2 }], over: { value: 36 }, proven: true });
    // Ends 17.7 thick: top and base as deep as the sides, the shelf less back and groove, 22.
    const faces = 17.7 * (4 * (4 * 560 + 2 * 538) + 2 * (4 * 320 + 2 * 298));
    const biscuits = 156 * 2 * 56 * 23;
    expect(glue?.areas.faces).toBeCloseTo(faces, 6);
    expect(glue?.areas.connectors).toBe(biscuits);
    const grams = Math.ceil(((faces + biscuits) / 1e6) * 160);
    expect([glue?.needed.value, glue?.spare.value]).toEqual([grams, Math.ceil(grams / 10)]);
    expect(glue?.buy?.packs).toEqual([{ size: { exact: '750', value: 750 }, text: '750 g', count: 1 }]);
  });

  it('counts biscuits and bands of the bookcase as by hand', async () => {
    const { bands, connectors } = await dataOf(job('bookcase', 3));
    // Three lines in each end: of top and base, of the divider, of three shelves on either side.
    expect(connectors.map(({ needed }) => needed.value)).toEqual([3 * 3 * (4 + 2 + 12)]);
    const fronts = 2 * 1100 + 2 * (1200 - 2 * 17.7) + (1100 - 2 * 17.7) + 6 * 573.45;
    expect(bands[0]).toMatchObject({ name: 'edge1', pieces: 3 * 11 });
    expect(bands[0]?.needed.value).toBe(Math.ceil(3 * (fronts + 11 * 20)));
    expect(bands[0]?.buy?.packs).toEqual([{ size: { exact: '50000', value: 50000 }, text: '50 m', count: 1 }]);
  });

  it('takes the faces of mitres a little larger than they are', async () => {
    const text = `units mm
import "shop.joinery"
cabinet Frame {
  part lh, rh : upright of birch18
  part top : level of birch18
  width 500 over lh and rh
  height 400 of lh, rh
  depth 300 of lh, rh
  rh.rear flush with lh
  rh.bottom flush with lh
  mitre top between lh and rh { outer top  flush rear, front  connect none "glued" }
}
job Order { 1 of Frame }
`;
    const { glue } = await dataOf(text);
    const faces = 2 * 300 * 17.7 * Math.SQRT2;
    expect(glue?.areas.faces).toBeGreaterThan(faces);
    expect(glue?.areas.faces).toBeLessThan(faces + 2 * 300 * 0.001);
  });

  it('glues layers up as they are cut, before they are trimmed', async () => {
    const text = `units mm
import "shop.joinery"
cabinet Bench {
  part lh, rh : upright of birch18
  part top : level of bench36
  width 500 over lh and rh
  height 400 of lh, rh
  depth 300 of lh, rh
  rh.rear flush with lh
  rh.bottom flush with lh
  butt top between lh and rh { flush top, rear, front  connect none "screwed" }
}
job Order { 2 of Bench }
`;
    const { glue } = await dataOf(text);
    expect(glue?.areas).toEqual({ faces: 0, connectors: 0, layers: 2 * (500 - 2 * 17.7 + 10) * (300 + 10) });
  });

  it('prints data as its schema says, with and without what the shop writes', async () => {
    const schema = JSON.parse(readFileSync(join(root, 'packages/output/schema/consumables.schema.json'), 'utf8'));
    const valid = new Ajv2020({ strict: false }).compile(schema);
    for (const name of ['periodicals', 'bookcase', 'rail-base', 'display-plinth']) {
      const text = name === 'periodicals' ? example(name) : job(name, 7);
      writeFileSync(join(folder, 'shop.joinery'), example('shop'));
      expect([valid(await dataOf(text)), valid.errors]).toEqual([true, null]);
      const unsaid = example('shop').replace(/ {2}(packs of|spare|rolls of) [^ }][^}]*?(?= {2}| })/g, '');
      expect(unsaid).not.toMatch(/packs|rolls|spare/);
      writeFileSync(join(folder, 'shop.joinery'), unsaid);
      const data = await dataOf(text);
      expect([valid(data), valid.errors]).toEqual([true, null]);
      expect(data.connectors.map(({ buy, share }) => [buy, share])).toEqual(
        data.connectors.map(() => [undefined, { of: 0.05, written: false }]),
      );
    }
  });

  it('says the same in its table, in the tables that are built, and on the cover of the sheets', async () => {
    const { out } = await dryfit('consumables', 'examples/periodicals.joinery');
    expect(out).toMatch(/^connector +biscuit20 +biscuit 56 x 23 x 4 +156 +8 \(5 %\) +164 +2 packs of 100 +36$/m);
    expect(out).toMatch(/^glue +pva +113 g +12 g \(10 %\) +125 g +1 pack of 750 g +625 g$/m);
    const built = (await dryfit('build', 'examples/periodicals.joinery')).out;
    expect(built).toContain(out.trim());
    expect((await dryfit('sheets', 'examples/periodicals.joinery', '--out', folder)).code).toBe(0);
    const html = readFileSync(join(folder, 'job-Library/sheets/sheets.html'), 'utf8');
    for (const words of [
      '2 packs of 100: biscuit20',
      'biscuit 56 x 23 x 4; 156 needed, 8 (5 %) to spare: 164 in all; 36 left over',
      '1 pack of 750 g: pva',
      '113 g needed, 12 g (10 %) to spare: 125 g in all; 625 g left over',
      'deep5: lines 70, 180, 270, 420, 500',
      '12 + 10 = 22',
    ])
      expect(html).toContain(words);
  });

  it('tells bands and glue by the feet and pounds that they are sold by', async () => {
    const imperial = example('shop')
      .replace('rolls of 50 m', 'rolls of 25 ft, 150 ft')
      .replace('packs of 750 g, 5 kg', 'packs of 8 oz, 1 lb');
    writeFileSync(join(folder, 'shop.joinery'), imperial);
    writeFileSync(join(folder, 'own.joinery'), job('bookcase', 3));
    const { out } = await dryfit('consumables', join(folder, 'own.joinery'));
    // 27,764 mm and 1,389 to spare are 91.1 and 4.6 ft; 150 ft less 95.65 leave 4.3 over of 4 x 25.
    expect(out).toMatch(/91\.1 ft +4\.6 ft \(5 %\) +95\.7 ft +4 rolls of 25 ft +4\.3 ft$/m);
    const grams = Number(
      /"glue"[\s\S]*?"inAll": \{\s*"exact": "(\d+)"/.exec(
        (await dryfit('consumables', join(folder, 'own.joinery'), '--format', 'json')).out,
      )?.[1],
    );
    expect(out).toContain(`${Math.ceil(grams / 2.8349523125) / 10} oz`);
  });

  it('says what the figures are that the shop has not written', async () => {
    writeFileSync(join(folder, 'shop.joinery'), example('shop').replace(/^glue .*$/m, ''));
    writeFileSync(join(folder, 'own.joinery'), example('periodicals'));
    const { out } = await dryfit('consumables', join(folder, 'own.joinery'));
    expect(out).toMatch(/Spare of glue: 5 %, the language's own figure \(common practice, no source\)/);
    expect(out).toMatch(/at 150 g\/m2, the language's own figure \(common practice, no source\)/);
    expect(out).toContain('The shop does not say what glue is sold in.');
  });

  it('counts nothing with errors unless asked to, and then says so', async () => {
    writeFileSync(join(folder, 'own.joinery'), example('periodicals').replace('set back 16', 'set back 1'));
    const refused = await dryfit('consumables', join(folder, 'own.joinery'));
    expect([refused.code, refused.out]).toEqual([1, '']);
    expect(refused.err).toContain('nothing was counted');
    const { code, out } = await dryfit('consumables', join(folder, 'own.joinery'), '--with-errors');
    expect(code).toBe(1);
    expect(out).toMatch(/error.* found; do not/);
  });

  it('names the jobs there are', async () => {
    const { code, err } = await dryfit('consumables', 'examples/periodicals.joinery', 'Libary');
    expect([code, err]).toEqual([2, expect.stringContaining('there is no job Libary in')]);
  });
});
