import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { all, hasClass, read } from '../drawings/paper.js';
import { root } from '../house/sources.js';
import { dryfit } from '../support/command.js';

let out: string;
beforeEach(() => {
  out = join(mkdtempSync(join(tmpdir(), 'dryfit-glue-up-')), 'tables');
});
afterEach(() => {
  rmSync(join(out, '..'), { recursive: true, force: true });
});

const glueUp = (file: string, ...more: readonly string[]) => dryfit('glue-up', `examples/${file}`, ...more);
const sheets = (cabinet: string): string[] => readdirSync(join(out, cabinet, 'glue-up')).sort();
const sheet = (cabinet: string, name: string): string => readFileSync(join(out, cabinet, 'glue-up', name), 'utf8');

describe('dryfit glue-up', () => {
  it('prints numbered steps with joints, connectors, clamps and cautions', async () => {
    const { code, out: said } = await glueUp('bookcase.joinery');
    expect(code).toBe(0);
    expect(said).toContain('Glue-up of Bookcase: 6 steps');
    expect(said).toMatch(/^6 {2}Put rh to back, base, rshelf 1 to 3 and top, moving to the left\.$/m);
    expect(said).toMatch(/^ +connectors +15 biscuit20$/m);
    expect(said).toContain('top / rh, base / rh, rshelf 1 / rh, rshelf 2 / rh, rshelf 3 / rh: all at the same time');
    expect(said).toContain('Put it together dry first');
    expect(said).toContain("The glue maker's times and local rules come before this sheet.");
  });

  it('counts every connector of a cabinet once, and every joint in one step', async () => {
    const { out: said } = await glueUp('rail-base.joinery', '--format', 'json');
    const [cabinet] = JSON.parse(said).cabinets;
    const joints: string[] = cabinet.steps.flatMap(({ joints: ids }: { joints: string[] }) => ids);
    expect(new Set(joints).size).toBe(joints.length);
    const counts = new Map<string, number>();
    for (const { connectors } of cabinet.steps)
      for (const { connector, count } of connectors) counts.set(connector, (counts.get(connector) ?? 0) + count);
    const table = (await dryfit('build', 'examples/rail-base.joinery')).out;
    // What the table of connectors of the cabinet says is needed.
    for (const [connector, count] of counts) expect(table).toMatch(new RegExp(`^${connector} .*\\b${count}\\b`, 'm'));
    expect([...counts.keys()].sort()).toEqual(['biscuit20', 'tenon8']);
  });

  it('prints data as its schema says', async () => {
    const schema = JSON.parse(readFileSync(join(root, 'packages/output/schema/glue-up.schema.json'), 'utf8'));
    const valid = new Ajv({ strict: false }).compile(schema);
    for (const file of ['periodicals.joinery', 'display-plinth.joinery', 'broken/cannot-be-assembled.joinery']) {
      const { out: said } = await glueUp(file, '--format', 'json', '--with-errors');
      expect(valid(JSON.parse(said)), JSON.stringify(valid.errors)).toBe(true);
    }
  });

  it('writes a sheet with a drawing of each step, and leaves what others made alone', async () => {
    await dryfit('build', 'examples/periodicals.joinery', '--out', out);
    await dryfit('draw', 'examples/periodicals.joinery', '--out', out);
    expect((await glueUp('periodicals.joinery', '--out', out)).err).toContain('wrote 8 files');
    expect(sheets('Periodicals')).toEqual(['glue-up.md', 'step-1.svg', 'step-2.svg', 'step-3.svg']);
    expect(existsSync(join(out, 'Periodicals', 'drawings', 'exploded.svg'))).toBe(true);
    await dryfit('build', 'examples/periodicals.joinery', '--out', out);
    expect(sheets('Periodicals')).toHaveLength(4);
    const text = sheet('Periodicals', 'glue-up.md');
    for (const name of sheets('Periodicals').slice(1)) expect(text).toContain(`](${name})`);
    expect(text).toContain('- Draw clamps up evenly');
  });

  it('draws what is there closed, what comes apart from it, and an arrow the way it goes', async () => {
    await glueUp('periodicals.joinery', '--out', out, '--cabinet', 'Periodicals');
    const last = read(sheet('Periodicals', 'step-3.svg'));
    const shown = all(last).flatMap(({ attributes }) => attributes['data-shape'] ?? []);
    expect(shown).toEqual(expect.arrayContaining(['part lh', 'part rh', 'part back']));
    const [arrow, ...more] = all(last).filter((element) => hasClass(element, 'shaft'));
    expect(more).toEqual([]);
    const [x0 = 0, , x1 = 0] = (arrow?.attributes.d ?? '').match(/-?[\d.]+/g)?.map(Number) ?? [];
    expect(x1).toBeLessThan(x0 - 20);
    expect(all(last).map(({ text }) => text)).toContain('to the left');
    const first = read(sheet('Periodicals', 'step-1.svg'));
    // Nothing that comes later is drawn yet.
    expect(all(first).map(({ attributes }) => attributes['data-shape'])).not.toContain('part rh');
    expect(all(first).filter((element) => hasClass(element, 'shaft'))).toHaveLength(3);
  });

  it('writes nothing with errors unless asked, and says then what cannot go together', async () => {
    const refused = await glueUp('broken/cannot-be-assembled.joinery', '--out', out);
    expect(refused.code).toBe(1);
    expect(existsSync(out)).toBe(false);
    const { code, out: said } = await glueUp('broken/cannot-be-assembled.joinery', '--with-errors');
    expect(code).toBe(1);
    expect(said).toContain('cannot be put together in any order');
    expect(said).toContain('do not glue up from this');
  });

  it('says what it was called wrongly with', async () => {
    expect((await glueUp('bookcase.joinery', '--out', '')).code).toBe(2);
    expect((await glueUp('bookcase.joinery', '--cabinet', 'Other')).err).toContain('there is Bookcase');
  });
});
