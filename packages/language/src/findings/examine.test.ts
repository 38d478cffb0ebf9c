import { readFileSync } from 'node:fs';
import { render } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { FilesInMemory, told } from '../testing/files.fixture.js';

const example = (name: string) => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), 'utf8');
const shop = example('shop.joinery');
const periodicals = example('periodicals.joinery');

const examined = (text: string, more: Record<string, string> = {}) =>
  new FilesInMemory({ 'shop.joinery': shop, 'text.joinery': text, ...more }).examine('text.joinery');

describe('jobs', () => {
  test('each set of parameters is worked out once, and what the cabinet has anyway is no set of its own', async () => {
    const { cabinets, jobs } = await examined(
      periodicals.replace('4 of', '1 of Periodicals(wide = 450, deep = 320)\n  4 of'),
    );
    const lines = jobs[0]?.lines ?? [];
    expect(lines.map(({ count }) => count)).toEqual([1, 4, 2]);
    expect(lines[1]?.result).toBe(cabinets[0]);
    expect(lines[0]?.result).toBe(lines[2]?.result);
    expect(lines[0]?.result.fit.parts.find(({ id }) => id === 'shelf')?.extent.y?.toNumber()).toBe(298);
  });

  test('what only a job’s numbers bring about is told at its line, with the place it is found', async () => {
    const text = periodicals.replace('deep = 320', 'deep = 290');
    const { findings } = await examined(text);
    expect(findings.length).toBeGreaterThan(0);
    for (const { source, message, related } of findings) {
      expect(text.slice(source.start, source.end)).toBe('2 of Periodicals(wide = 450, deep = 290)');
      expect(render(message, { units: 'mm' })).toMatch(/^Periodicals with wide 450, deep 290: /);
      expect(related[0]?.source.start).toBeLessThan(source.start);
    }
  });

  test('what the cabinet as written shows as well is told there alone', async () => {
    const text = periodicals.replaceAll('by deep5', 'by lines 20, 180, 270');
    const { findings } = await examined(text);
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.filter(({ source }) => source.start > text.indexOf('job Library'))).toEqual([]);
  });

  test('say what is milled before what', async () => {
    const { jobs, findings } = await examined(
      periodicals.replace(
        '4 of',
        'late back of Periodicals\n  mill lh, rh of Periodicals before shelf of Periodicals\n  4 of',
      ),
    );
    expect(findings).toEqual([]);
    const of = (...names: string[]) => ({ cabinet: 'Periodicals', parts: names.map((name) => ({ name })) });
    expect(jobs[0]?.orders).toMatchObject([
      { kind: 'late', parts: of('back') },
      { kind: 'before', first: of('lh', 'rh'), next: of('shelf') },
    ]);
  });

  test.each([
    ['late lh of Periodicals\n late rh, lh of Periodicals', []],
    ['late bak of Periodicals', ['unknown-name `bak`: there is no part called bak in Periodicals']],
    [
      'late back of Periodical',
      ['unknown-name `Periodical`: there is no cabinet called Periodical in this file or in what it imports'],
    ],
    ['late shelf 2 of Periodicals', ['no-such-part `shelf 2`: shelf is one part and has no number 2']],
    ['late slat 4 of Slats\n 1 of Slats', ['no-such-part `slat 4`: there is no slat 4: slat has the numbers 1 to 3']],
    ['late slat of Slats', ['not-in-job `Slats`: Library makes no Slats, so there is nothing of it to be milled']],
    [
      'mill lh of Periodicals before lh, rh of Periodicals',
      ['order-cycle `mill lh of Periodicals before lh, rh of Periodicals`: this has lh before lh, which cannot be'],
    ],
    [
      'mill lh of Periodicals before top of Periodicals\n mill top of Periodicals before base of Periodicals\n mill base of Periodicals before lh of Periodicals',
      [
        'order-cycle `mill base of Periodicals before lh of Periodicals`: this has base before lh before top before base, which cannot be',
      ],
    ],
    // Of like parts each is one: one of them may come before another.
    ['1 of Slats mill slat 1 of Slats before slat 2, slat 3 of Slats', []],
    [
      '1 of Slats mill slat 1 of Slats before slat of Slats',
      [
        'order-cycle `mill slat 1 of Slats before slat of Slats`: this has slat 1 of Slats before slat 1 of Slats, which cannot be',
      ],
    ],
  ])('orders: %s', async (lines, wanted) => {
    const slats = 'cabinet Slats { parts slat 1 to 3 : level of birch18 }';
    const text = `${periodicals.replace('4 of', `${lines}\n  4 of`)}\n${slats}\n`;
    const { findings } = await examined(text);
    const from = text.indexOf('job Library');
    expect(
      told(
        findings.filter(({ source }) => source.start >= from && source.end < text.indexOf(slats)),
        text,
      ),
    ).toEqual(wanted);
  });

  test('numbers are in the units of the job’s file', async () => {
    const text = 'units in\nimport "periodicals.joinery"\njob Library { 1 of Periodicals(wide = 30, deep = 560 mm) }';
    const { jobs } = await examined(text, { 'periodicals.joinery': periodicals });
    expect(jobs[0]?.lines[0]?.result.fit.outside?.x.toNumber()).toBe(762);
  });

  test.each([
    ['2 of Periodicals(wide = 450, wide = 500)', 'written-twice `wide = 500`: wide is given twice'],
    ['2.5 of Periodicals', 'not-whole `2.5`: 2.5 is not a number of cabinets to make'],
    ['2 of Periodicals(wdth = 450)', 'unknown-name `wdth`: there is no parameter called wdth in Periodicals'],
    ['0 of Periodicals', 'not-whole `0`: 0 is not a number of cabinets to make'],
    ['1 of Periodicals(wide = 450 / 0)', 'division-by-zero `/`: 0 comes to 0, and nothing can be divided by it'],
  ])('%s', async (line, wanted) => {
    const text = periodicals.replace(/4 of .*/, line);
    const { findings } = await examined(text);
    expect(told(findings, text)).toEqual([wanted]);
  });
});

test('a name that a job gives a figure to is looked for among the parameters of its cabinet', async () => {
  const cures = async (name: string) =>
    (await examined(periodicals.replace(/4 of .*/, `4 of Periodicals(${name} = 450)`))).findings.map(({ cure }) =>
      render(cure, { units: 'mm' }),
    );
  expect(await cures('wdie')).toEqual(['Did you mean wide?']);
  expect(await cures('length')).toEqual(['Define it, or write another name. There is deep, high or wide.']);
});

describe('what is allowed', () => {
  const [part] = /part back.*/.exec(periodicals) ?? [''];
  const spare = (allow: string) => periodicals.replace(part, `parameter spare = 3\n  ${allow}\n  ${part}`);
  const codes = async (text: string) => (await examined(text)).findings.map(({ code }) => code);

  test('is not told, and an allowance that allows nothing is', async () => {
    expect(await codes(spare(''))).toEqual(['never-used']);
    expect(await codes(spare('allow never-used "for the next size"'))).toEqual([]);
    expect(await codes(periodicals.replace(part, `allow never-used "none"\n  ${part}`))).toEqual(['allow-unused']);
    expect(await codes(spare('allow never-usd "for the next size"'))).toEqual(['never-used', 'unknown-check']);
    expect(await codes(spare('allow syntax "no"'))).toEqual(['never-used', 'unknown-check']);
  });

  test('has its use if only a job needs it', async () => {
    const narrow = periodicals.replace('deep = 320', 'deep = 290');
    const needed = new Set(await codes(narrow));
    expect(needed.size).toBe(1);
    const [code] = needed;
    const allowing = narrow.replace(part, `allow ${code} "trimmed by hand"\n  ${part}`);
    expect(await codes(allowing)).toEqual([]);
  });
});

describe('what is used', () => {
  test('stock in a file that has cabinets and that nothing imports is looked at', async () => {
    const text = `${periodicals}\npattern spare { lines 70 }\nconnector own : biscuit { along 56  across 23  thickness 4  plunge 12.3  by joiner }`;
    const memory = new FilesInMemory({
      'shop.joinery': shop,
      'text.joinery': text,
      'other.joinery': 'import "text.joinery"',
    });
    const codes = async () => (await memory.examine('text.joinery')).findings.map(({ code }) => code);
    expect(await codes()).toEqual(['never-used', 'never-used']);
    await memory.open('other.joinery');
    expect(await codes()).toEqual([]);
  });
});

test('the text can be examined without working anything out', async () => {
  const memory = new FilesInMemory({
    'shop.joinery': shop,
    'text.joinery': periodicals.replace('deep = 320', 'deep = 29'),
  });
  const { examine } = await import('./examine.js');
  const document = await memory.open('text.joinery');
  const { findings, cabinets } = examine(document, memory.services.joinery, { joinery: false });
  expect([findings, cabinets]).toEqual([[], []]);
});

test('sizes can be worked from the thickness that sheets are sold by', async () => {
  const memory = new FilesInMemory({ 'shop.joinery': shop, 'text.joinery': periodicals });
  const { examine } = await import('./examine.js');
  const document = await memory.open('text.joinery');
  const { cabinets } = examine(document, memory.services.joinery, { thickness: 'nominal' });
  expect(cabinets[0]?.fit.parts.find(({ id }) => id === 'top')?.extent.x?.toNumber()).toBe(564);
});
