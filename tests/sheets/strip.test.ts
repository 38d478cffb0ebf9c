import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Jig, nearMarks, type Pattern, Rational, type Strip, stripOf } from '@dryfit/engine';
import { PAPERS, sheetsHtml, stripPages } from '@dryfit/output';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import { sheetsPdf } from '../../packages/cli/src/output/pdf.js';
import { dryfit } from '../support/command.js';
import { faults } from './faults.js';
import { inHtml, inPdf, type Joined, joined, onPages, type Paper } from './strip-reader.js';

const source = { uri: 'file:///shop.joinery', start: 0, end: 0 };
const LIMITS = { step: Rational.of(3, 10) } as Parameters<typeof stripOf>[1]['limits'];
const tenths = (n: number): Rational => Rational.of(n, 10);

function stripFor(lines: readonly Rational[], bed: Rational | undefined, more: Partial<Jig> = {}): Strip {
  const pattern: Pattern = { name: 'own', source, layout: { kind: 'lines', lines } };
  const jig: Jig = { name: 'bench', source, fences: ['left', 'right'], spacers: [], ...(bed ? { bed } : {}), ...more };
  const strip = stripOf(pattern, { jig, limits: LIMITS });
  if (!strip) throw new Error('no strip');
  return strip;
}

/** Every place is wanted, and found within a hundredth of a millimetre; nothing else is found. */
function sameplaces(found: readonly number[], wanted: readonly number[]): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) < 0.01;
  return (
    wanted.every((one) => found.some((it) => near(it, one))) && found.every((it) => wanted.some((one) => near(it, one)))
  );
}

/** What a strip is wanted of, mm. */
interface Wanted {
  readonly lines: readonly number[];
  readonly bed: number | undefined;
  readonly fences: Jig['fences'];
}

/** A bed has one strip with the lines that lie on it; without one each hand has its own, from its end on. */
function expectJoined(strips: readonly Joined[], { lines, bed, fences }: Wanted): void {
  expect(strips).toHaveLength(bed === undefined ? fences.length : 1);
  const longest = Math.max(...lines);
  const end = bed ?? strips[0]?.length ?? Number.NaN;
  for (const { length } of strips) expect(length).toBeCloseTo(end, 2);
  // A strip of no bed ends a little beyond its last line.
  if (bed === undefined) expect([end > longest + 5, end < longest + 100]).toEqual([true, true]);
  const own = lines.filter((line) => line <= end);
  const left = fences.includes('left') ? own : [];
  const right = fences.includes('right') ? own.map((line) => end - line) : [];
  const whole = strips.flatMap((one) => one.whole);
  const broken = strips.flatMap((one) => one.broken);
  expect([whole, left, sameplaces(whole, left)]).toEqual([whole, left, true]);
  expect([broken, right, sameplaces(broken, right)]).toEqual([broken, right, true]);
}

const strips = fc
  .record({
    bed: fc.option(fc.integer({ min: 500, max: 30_000 }), { nil: undefined }),
    lines: fc.uniqueArray(fc.integer({ min: 300, max: 14_000 }), {
      minLength: 1,
      maxLength: 8,
      selector: (n) => Math.round(n / 250),
    }),
    fences: fc.constantFrom<Jig['fences']>(['left', 'right'], ['left'], ['right']),
    paper: fc.constantFrom('A4' as const, 'Letter' as const),
    units: fc.constantFrom('mm' as const, 'in' as const),
  })
  .map(({ bed, lines, fences, paper, units }) => ({
    strip: stripFor(lines.map(tenths), bed === undefined ? undefined : tenths(bed), { fences }),
    wanted: { lines: lines.map((line) => line / 10), bed: bed === undefined ? undefined : bed / 10, fences },
    paper,
    units,
  }));

describe('a line strip, cut out and glued together', () => {
  test('has every line of both hands at its place, whatever the pattern, the bed and the paper', () => {
    fc.assert(
      fc.property(strips, ({ strip, wanted, paper, units }) => {
        const pages = stripPages(strip, paper, { units });
        expectJoined(joined(onPages(pages)), wanted);
        for (const page of pages) {
          expect([
            [page.width, page.height],
            [page.height, page.width],
          ]).toContainEqual([...PAPERS[paper]]);
          expect(faults(page)).toEqual([]);
        }
      }),
      { numRuns: 300 },
    );
  });

  test.each([
    ['A4', 'mm'],
    ['Letter', 'in'],
  ] as const)('measures as much in HTML and in PDF on %s, and 100 mm or 4 in on every page', async (paper, units) => {
    const lines = [70, 180, 270, 420, 500];
    const strip = stripFor(
      lines.map((n) => Rational.of(n)),
      Rational.of(900),
    );
    const pages = stripPages(strip, paper, { units });
    const pdf = await inPdf(await sheetsPdf('strip', pages));
    for (const printed of [inHtml(sheetsHtml('strip', pages)), pdf]) {
      expect(printed.map(({ size }) => size.map((mm) => Math.round(mm * 10) / 10))).toEqual(
        pages.map(({ width, height }) => [width, height]),
      );
      expectJoined(joined(printed), { lines, bed: 900, fences: ['left', 'right'] });
      for (const sheet of printed) expect(levelLengths(sheet)).toContainEqual(units === 'in' ? 101.6 : 100);
    }
    expect(pdf[0]?.words.join(' ')).toMatch(/print at 100 %/);
  });
});

/** Lengths of the level lines on a sheet, to a hundredth of a millimetre. */
const levelLengths = ({ strokes }: Paper): readonly number[] =>
  strokes
    .filter(({ from, to }) => Math.abs(from[1] - to[1]) < 1e-6)
    .map(({ from, to }) => Math.round((to[0] - from[0]) * 100) / 100);

describe('lines of two hands that are taken for each other', () => {
  test('are those whose marks lie apart on the bed, but not by enough to be told apart', () => {
    // Tenths of a millimetre: 3 are let pass, and 30 are told apart.
    const line = fc.integer({ min: 0, max: 20_000 });
    const bed = fc.integer({ min: 21_000, max: 30_000 });
    const near = fc.array(fc.tuple(line, fc.integer({ min: -40, max: 40 })), { maxLength: 10 });
    const others = fc.array(line, { maxLength: 20 });
    const seen = { pass: 0, mistaken: 0, clear: 0 };
    fc.assert(
      fc.property(near, others, others, bed, (pairs, left, right, long) => {
        const lefts = [...pairs.map(([from]) => from), ...left];
        const rights = [...pairs.map(([from, off]) => long - from + off), ...right];
        const wanted = lefts.flatMap((a) =>
          rights.flatMap((b) => {
            const apart = Math.abs(a + b - long);
            const kind = apart <= 3 ? 'pass' : apart >= 30 ? 'clear' : 'mistaken';
            seen[kind]++;
            return kind === 'mistaken' ? [[a, b, apart]] : [];
          }),
        );
        const found = nearMarks(lefts.map(tenths), rights.map(tenths), tenths(long), tenths(3));
        expect(found.map((one) => [one.left, one.right, one.apart].map(String))).toEqual(
          wanted.map((places) => places.map((place) => String(tenths(place)))),
        );
      }),
      {
        examples: [
          // Each lies at its figure from the same place on the bed.
          [
            [-31, -30, -29, -4, -3, 0, 3, 4, 29, 30, 31].map((off, i): [number, number] => [1000 + 500 * i, off]),
            [],
            [],
            25_000,
          ],
        ],
      },
    );
    expect(seen.pass).toBeGreaterThanOrEqual(3);
    expect(seen.mistaken).toBeGreaterThanOrEqual(4);
    expect(seen.clear).toBeGreaterThan(4);
  });

  test('are not told of a mark that serves both hands, nor where there is no bed', () => {
    const lines = [tenths(4500)];
    expect(stripFor(lines, Rational.of(900)).near).toEqual([]);
    expect(stripFor([tenths(4510)], Rational.of(900)).near).toHaveLength(1);
    expect(stripFor([tenths(4510)], undefined).near).toEqual([]);
    expect(stripFor([tenths(4510)], Rational.of(900), { fences: ['left'] }).near).toEqual([]);
    expect(stripFor([tenths(4510)], Rational.of(900), { reach: Rational.of(400) }).near).toEqual([]);
  });
});

describe('dryfit strip', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'dryfit-strip-'));
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  const strip = (file: string, ...more: readonly string[]) => dryfit('strip', file, '--out', folder, ...more);
  const made = () => readdirSync(join(folder, 'line-strips')).sort();

  it('prints every pattern with fixed lines of a shop, and says what of the others is wanted', async () => {
    const { code, out, err } = await strip('examples/shop.joinery');
    expect([code, made()]).toEqual([0, ['book3.html', 'book3.pdf', 'deep5.html', 'deep5.pdf']]);
    expect(out).toMatch(/^wrote 4 pages to .*deep5\.pdf/);
    expect(err).toContain('pattern high4 has no fixed lines');
    const [whole] = joined(await inPdf(readFileSync(join(folder, 'line-strips/deep5.pdf'))));
    expect(sameplaces(whole?.broken ?? [], [400, 480, 630, 720, 830])).toBe(true);
  });

  it('spreads a pattern over a length, where rounding shows', async () => {
    const { code } = await strip('examples/rail-base.joinery', 'deepin', '--length', '23 1/4');
    expect([code, made()]).toEqual([0, ['deepin-23-1-4.html', 'deepin-23-1-4.pdf']]);
    const printed = await inPdf(readFileSync(join(folder, 'line-strips/deepin-23-1-4.pdf')));
    // 3 in from the one end, 2 1/4 from the other, and two between them, since 18 in is more than two steps of 7.
    expect(
      sameplaces(
        joined(printed)[0]?.whole ?? [],
        [3, 9, 15, 21].map((inches) => inches * 25.4),
      ),
    ).toBe(true);
    const thirds = await strip('examples/shop.joinery', 'wide3', '--length', '500');
    expect(thirds.code).toBe(0);
    const [third] = inHtml(readFileSync(join(folder, 'line-strips/wide3-500.html'), 'utf8'));
    expect(third?.words.join('\n')).toContain('left 193.33');
    expect(third?.words.join('\n')).toMatch(/wide3, \S*0\.003\S* mm/);
  });

  it('refuses what it cannot print, and says what there is', async () => {
    for (const [args, wanted] of [
      [['examples/shop.joinery', 'deep6'], 'there is no pattern deep6 in examples/shop.joinery; there is book3, deep5'],
      [['examples/shop.joinery', 'high4'], 'give a length with --length'],
      [['examples/shop.joinery', 'deep5', '--length', '500'], 'the lines of pattern deep5 are fixed'],
      [['examples/shop.joinery', 'high4', '--length', 'long'], '--length takes a length above zero'],
      [
        ['examples/shop.joinery', 'high4', '--length', '950'],
        'a part 950 long does not lie on the bed of longbed, which is 900',
      ],
      [['examples/broken/syntax.joinery'], 'nothing was written'],
    ] as const) {
      const [file, ...more] = args;
      const { code, err } = await strip(file ?? '', ...more);
      expect([code > 0, err]).toEqual([true, expect.stringContaining(wanted)]);
    }
    expect(readdirSync(folder)).toEqual([]);
  });

  it('warns on the terminal and on the strip, and takes away the strip of a pattern that is no more', async () => {
    const file = join(folder, 'own.joinery');
    const jig = 'jig bench { bed 900  fences left, right }\n';
    writeFileSync(file, `units mm\npattern snug { lines 70, 398, 500 }\n${jig}`);
    const { code, err } = await strip(file);
    expect(code).toBe(0);
    expect(err).toContain('the lines 398 and 500, each from another fence, lie only 2 apart');
    const printed = inHtml(readFileSync(join(folder, 'line-strips/snug.html'), 'utf8'));
    const words = printed.flatMap((sheet) => sheet.words).join('\n');
    for (const wanted of ['CAREFUL: lines 398 and 500', 'NOT right 500', 'NOT left 398'])
      expect(words).toContain(wanted);
    writeFileSync(file, `units mm\npattern wide { lines 70, 395, 500 }\n${jig}`);
    expect((await strip(file)).err).not.toContain('apart');
    expect(made()).toEqual(['wide.html', 'wide.pdf']);
  });
});
