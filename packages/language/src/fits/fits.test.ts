import { readFileSync } from 'node:fs';
import { type FitResult, fit } from '@dryfit/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { examine } from '../findings/examine.js';
import { isCabinet } from '../generated/ast.js';
import { FilesInMemory, told } from '../testing/files.fixture.js';
import { Fits } from './fits.js';

const example = (name: string) => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), 'utf8');
const shop = example('shop.joinery');
const bookcase = example('bookcase.joinery');
const periodicals = example('periodicals.joinery');
const head = /^[\s\S]*?(?=^cabinet )/m.exec(periodicals)?.[0] ?? '';
const cabinet = /^cabinet [\s\S]*?^}\n/m.exec(periodicals)?.[0] ?? '';
const job = /^job [\s\S]*?^}\n/m.exec(periodicals)?.[0] ?? '';
const named = (name: string) => cabinet.replace('Periodicals', name);
const three = ['Lower', 'Middle', 'Upper'].map(named).join('\n');

/** A file of cabinets beside the shop, and which of them have been worked out since it was last asked. */
async function count(text: string, more: Readonly<Record<string, string>> = {}) {
  const memory = new FilesInMemory({ 'shop.joinery': shop, 'text.joinery': head + text, ...more });
  const { Files, Shops } = memory.services.joinery.joinery;
  let worked: string[] = [];
  const fits = new Fits(Files, Shops, (spec): FitResult => {
    worked.push(spec.name);
    return fit(spec);
  });
  const since = async (): Promise<string[]> => {
    const document = await memory.open('text.joinery');
    const services = memory.services.joinery;
    examine(document, { ...services, joinery: { ...services.joinery, Fits: fits } });
    return worked.splice(0);
  };
  worked = [];
  await since();
  return { memory, fits, since, write: (now: string) => memory.write('text.joinery', head + now) };
}

test('a cabinet that only moves is not worked out again, and what is told of it moves along', async () => {
  const broken = three.replaceAll('by deep5', 'by lines 20, 180, 270');
  const { memory, since, write } = await count(broken);
  const moved = `// Counted on the shelf.\n${broken}\n`;
  await write(moved);
  expect(moved.length).toBeGreaterThan(broken.length);
  expect(await since()).toEqual([]);
  const { findings } = await memory.examine('text.joinery');
  expect(findings.length).toBeGreaterThan(3);
  expect(told(findings, head + moved)).toEqual(
    told(
      (await new FilesInMemory({ 'shop.joinery': shop, 'a.joinery': head + moved }).examine('a.joinery')).findings,
      head + moved,
    ),
  );
});

test('a cabinet that is edited is worked out alone', async () => {
  const { since, write } = await count(three);
  await write(three.replace('wide = 600', 'wide = 610'));
  expect(await since()).toEqual(['Lower']);
});

test.each([
  ['a comment', (text: string) => text.replace('units mm', '// as counted in spring\nunits mm'), []],
  [
    'a sheet it has none of',
    (text: string) => text.replace('material bench36', 'material spare { thickness 9 }\nmaterial bench36'),
    [],
  ],
  [
    'an entry it does not draw on',
    (text: string) => text.replace('first 80  last 80  pitch at most 150', 'first 90  last 90'),
    [],
  ],
  ['its sheet', (text: string) => text.replace('measured 17.7', 'measured 17.6'), ['Lower', 'Middle', 'Upper']],
  ['what its machine is set to', (text: string) => text.replace('kerf 4', 'kerf 3.9'), ['Lower', 'Middle', 'Upper']],
  [
    'the least material',
    (text: string) => text.replace('skin under slot 3', 'skin under slot 2'),
    ['Lower', 'Middle', 'Upper'],
  ],
  ['a spacer of the jig', (text: string) => text.replace('spacers 6,', 'spacers 5,'), ['Lower', 'Middle', 'Upper']],
])('when the shop file changes in %s', async (_, change, wanted) => {
  const { memory, since } = await count(three);
  const now = change(shop);
  expect(now).not.toBe(shop);
  await memory.write('shop.joinery', now);
  expect(await since()).toEqual(wanted);
});

test('a name that stood for nothing is looked up again when the shop gets it', async () => {
  const { memory, since } = await count(three.replace('by deep5', 'by deep9'));
  await memory.write('shop.joinery', `${shop}pattern deep9 { lines 70, 420 }\n`);
  expect(await since()).toContain('Lower');
});

test('two cabinets of one name and one text each keep their place', async () => {
  const text = named('Twin').replaceAll('by deep5', 'by lines 20, 180, 270');
  const { memory } = await count(text + text);
  const { findings } = await memory.examine('text.joinery');
  const second = head.length + text.length;
  const near = findings.filter(({ code }) => code === 'slot-near-edge').map(({ source }) => source.start);
  expect(near.filter((start) => start < second).map((start) => start + text.length)).toEqual(
    near.filter((start) => start >= second),
  );
});

test('after any edits, what is told is what somebody is told who reads the texts for the first time', async () => {
  const texts = { 'shop.joinery': shop, 'periodicals.joinery': periodicals, 'bookcase.joinery': bookcase };
  const edits = fc.array(
    fc.record({
      file: fc.constantFrom<keyof typeof texts>('shop.joinery', 'periodicals.joinery', 'bookcase.joinery'),
      at: fc.integer({ min: 0, max: 999 }),
      take: fc.nat(3),
      put: fc.constantFrom('', ' ', '1', '\n', '// a\n', '}', 'x'),
    }),
    { minLength: 1, maxLength: 4 },
  );
  await fc.assert(
    fc.asyncProperty(edits, async (list) => {
      const now = { ...texts };
      const memory = new FilesInMemory(now);
      const all = async (files: FilesInMemory) => [
        await files.examine('periodicals.joinery'),
        await files.examine('bookcase.joinery'),
      ];
      await all(memory);
      for (const { file, at, take, put } of list) {
        const place = Math.floor((at * now[file].length) / 1000);
        now[file] = now[file].slice(0, place) + put + now[file].slice(place + take);
        await memory.write(file, now[file]);
        await all(memory);
      }
      const plain = (value: unknown) => JSON.parse(JSON.stringify(value, bigintAsText)) as unknown;
      const [kept, fresh] = [await all(memory), await all(new FilesInMemory(now))];
      expect(plain(kept.map(({ findings }) => findings))).toEqual(plain(fresh.map(({ findings }) => findings)));
      expect(plain(kept.map(({ cabinets }) => cabinets.map((one) => [one.fit, one.spec.source])))).toEqual(
        plain(fresh.map(({ cabinets }) => cabinets.map((one) => [one.fit, one.spec.source]))),
      );
    }),
    { numRuns: 25 },
  );
});

const bigintAsText = (_: string, value: unknown): unknown => (typeof value === 'bigint' ? value.toString() : value);

test('typing two thousand keys keeps no more than what the text now has', async () => {
  const { memory, fits } = await count(named('Lower') + job.replaceAll('Periodicals', 'Lower'));
  const document = await memory.open('text.joinery');
  const cabinets = document.parseResult.value.entries.filter(isCabinet);
  const before = fits.held;
  expect(before.cabinets).toBe(cabinets.length);
  let [text, held] = [head + named('Lower') + job.replaceAll('Periodicals', 'Lower'), before];
  for (let key = 0; key < 2000; key++) {
    // A name, a width, and a job's value in turn: what each key leaves behind is let go.
    const digit = String(key % 10);
    text =
      key % 3 === 0
        ? text.replace(/Lower\d*/g, `Lower${key}`)
        : key % 3 === 1
          ? text.replace(/wide = 60\d/, `wide = 60${digit}`)
          : text.replace(/wide = 45\d/, `wide = 45${digit}`);
    if (key % 20 !== 19) continue;
    await memory.write('text.joinery', text);
    const now = await memory.open('text.joinery');
    for (const entry of now.parseResult.value.entries) if (isCabinet(entry)) fits.of(entry);
    held = fits.held;
    expect(held.cabinets).toBe(1);
    expect(held.variants).toBeLessThanOrEqual(64);
  }
});
