import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { root } from '../house/sources.js';
import { dryfit } from '../support/command.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dryfit-plan-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** The words of each page of a PDF and its size in mm, as another reader has them. */
async function pagesOf(bytes: Uint8Array): Promise<{ readonly words: string; readonly size: readonly number[] }[]> {
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: { readonly words: string; readonly size: readonly number[] }[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const { items } = await page.getTextContent();
    const [, , width = 0, height = 0] = page.view;
    pages.push({
      words: items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : [])).join('\n'),
      size: [width, height].map((points) => Math.round((points * 254) / 72) / 10),
    });
  }
  await document.destroy();
  return pages;
}

describe('dryfit plan', () => {
  it('prints the set-ups of a job in their order, what each changes, and what that saves', async () => {
    const { code, out } = await dryfit('plan', 'examples/periodicals.joinery');
    expect(code).toBe(0);
    expect(out).toContain('4 set-ups: 16 min of changing (no choice of settings and no order takes less)');
    expect(out).toMatch(/Cabinet by cabinet: 72 set-ups, 131 min of changing; this plan takes 88 % less/);
    expect(out).toMatch(/^ *shelf +4 +left end|Periodicals +shelf +4 +left end/m);
    expect(out).toContain('rear edge against the left fence');
    expect(out).toMatch(/ 2 +1 +end for end, bottom face still down +right end +right, was left/);
    expect(out).toContain('12 + 10 = 22');
    expect(out).toContain("The machine's manual and local rules come before this sheet.");
  });

  it('prints data as its schema says', async () => {
    const schema = JSON.parse(readFileSync(join(root, 'packages/output/schema/plan.schema.json'), 'utf8'));
    const valid = new Ajv2020({ strict: false }).compile(schema);
    const { out } = await dryfit('plan', 'examples/periodicals.joinery', 'Library', '--format', 'json');
    expect([valid(JSON.parse(out)), valid.errors]).toEqual([true, null]);
  });

  it('says which jobs there are, and what a job is where there is none', async () => {
    expect(await dryfit('plan', 'examples/bookcase.joinery')).toMatchObject({
      code: 2,
      err: expect.stringContaining('there is no job in'),
    });
    const { code, err } = await dryfit('plan', 'examples/periodicals.joinery', 'Libary');
    expect([code, err]).toEqual([
      2,
      expect.stringContaining('there is no job Libary in examples/periodicals.joinery; there is Library'),
    ]);
  });

  it('takes the times of the shop', async () => {
    const text = readFileSync(join(root, 'examples/periodicals.joinery'), 'utf8');
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'shop.joinery'), readFileSync(join(root, 'examples/shop.joinery'), 'utf8'));
    writeFileSync(
      join(folder, 'own.joinery'),
      `${text}\nchanges { machine 0 min  depth 0 min  base 0 min  pose 0 min  pattern 0 min  spacer 10 min  stop 0 min }\n`,
    );
    const { out } = await dryfit('plan', join(folder, 'own.joinery'));
    // 22 once and none once; the first takes something up as well.
    expect(out).toMatch(/4 set-ups: 20 min of changing \(no choice/);
    expect(out).toContain('by the shop’s figures');
  });
});

describe('dryfit sheets', () => {
  const sheets = (...more: readonly string[]) =>
    dryfit('sheets', 'examples/periodicals.joinery', '--out', folder, ...more);
  const made = (name: string) => readFileSync(join(folder, 'job-Library/sheets', name));

  it('writes HTML and PDF that say the same on every page', async () => {
    const { code, out } = await sheets();
    expect([code, out]).toEqual([0, expect.stringMatching(/^wrote \d+ pages to /)]);
    const html = made('sheets.html').toString();
    const svgs = html.match(/<svg[\s\S]*?<\/svg>/g) ?? [];
    const pages = await pagesOf(made('sheets.pdf'));
    expect(pages).toHaveLength(svgs.length);
    svgs.forEach((svg, i) => {
      const words = [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) =>
        text?.replaceAll('&quot;', '"').replaceAll('&#39;', "'"),
      );
      const page = pages[i]?.words.replace(/\s+/g, '') ?? '';
      for (const text of words) expect(page).toContain((text ?? '').replace(/\s+/g, ''));
    });
  });

  it('prints on the paper asked for, in the units asked for', async () => {
    await sheets('--paper', 'Letter', '--units', 'in');
    const pages = await pagesOf(made('sheets.pdf'));
    for (const { size } of pages) expect(size).toEqual([215.9, 279.4]);
    expect(pages.at(-1)?.words).toContain('lengths in inches');
    await sheets();
    for (const { size } of await pagesOf(made('sheets.pdf'))) expect(size).toEqual([210, 297]);
  });

  it('writes one set-up alone, the same pages as among all, and leaves those where they are', async () => {
    await sheets();
    const all = made('sheets.html').toString();
    const pagesIn = (html: string) => html.match(/<svg[\s\S]*?<\/svg>/g) ?? [];
    const { code, out } = await sheets('--set-up', '2');
    expect([code, out]).toEqual([0, expect.stringContaining('job-Library/sheets/set-up-2.html')]);
    const one = pagesIn(made('set-up-2.html').toString());
    expect(one).toEqual(pagesIn(all).filter((page) => page.includes('<title>job Library, Set-up 2 of 4')));
    expect(one.length).toBeGreaterThan(0);
    expect(await pagesOf(made('set-up-2.pdf'))).toHaveLength(one.length);
    expect(made('sheets.html').toString()).toBe(all);
    // All of them anew take away the one, which may be older.
    await sheets();
    expect(readdirSync(join(folder, 'job-Library/sheets')).sort()).toEqual([
      'labels.html',
      'labels.pdf',
      'sheets.html',
      'sheets.pdf',
    ]);
  });

  it('refuses a set-up that the plan has not got, and writes nothing', async () => {
    for (const wrong of ['5', '0', 'two']) {
      const { code, err } = await sheets('--set-up', wrong);
      expect([code, readdirSync(folder)]).toEqual([2, []]);
      if (wrong === '5') expect(err).toContain('there is no set-up 5 in job Library; it has 1 to 4');
    }
  });

  it('is the same every time, and stands beside tables and drawings without taking them away', async () => {
    await sheets();
    const first = made('sheets.pdf');
    await dryfit('build', 'examples/periodicals.joinery', '--out', folder);
    expect(existsSync(join(folder, 'job-Library/sheets/sheets.pdf'))).toBe(true);
    await sheets();
    expect(made('sheets.pdf').equals(first)).toBe(true);
    expect(readdirSync(join(folder, 'job-Library'))).toEqual(expect.arrayContaining(['slots.csv', 'sheets']));
  });

  it('writes nothing where there are errors, and says so on every page where it is told to all the same', async () => {
    const text = readFileSync(join(root, 'examples/periodicals.joinery'), 'utf8').replace(
      'rear set back 16 from',
      'rear set back 15 from',
    );
    writeFileSync(join(folder, 'shop.joinery'), readFileSync(join(root, 'examples/shop.joinery'), 'utf8'));
    writeFileSync(join(folder, 'wrong.joinery'), text);
    const at = join(folder, 'out');
    const refused = await dryfit('sheets', join(folder, 'wrong.joinery'), '--out', at);
    expect([refused.code, existsSync(at)]).toEqual([1, false]);
    await dryfit('sheets', join(folder, 'wrong.joinery'), '--out', at, '--with-errors');
    const pages = await pagesOf(readFileSync(join(at, 'job-Library/sheets/sheets.pdf')));
    for (const { words } of pages) expect(words).toMatch(/ERRORS? FOUND: DO NOT MILL (FROM TH|THESE PARTS)/);
  });
});
