import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../testing/files.fixture.js';
import { libraryHolding, libraryNames } from './library.js';

const rack = (lines: string) => `${libraryNames.map((name) => `import "dryfit:${name}"`).join('\n')}
cabinet Rack {
  part lh, rh : upright of plywood18
  part shelf  : level of plywood18
  width 600 over lh and rh
  height 300 of lh, rh
  depth 320 of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  butt shelf between lh and rh {
    bottom 100 above lh.bottom
    flush rear, front
    ${lines}
  }
}`;

const read = (lines: string) => new FilesInMemory({ 'rack.joinery': rack(lines) }).examine('rack.joinery');

test('the text that is compiled in is that of the files', async () => {
  const { libraryTexts } = await import('./generated/texts.js');
  const files = readdirSync(new URL('.', import.meta.url)).filter((file) => file.endsWith('.joinery'));
  const texts = files.map((file) => [
    file.replace('.joinery', ''),
    readFileSync(new URL(file, import.meta.url), 'utf8'),
  ]);
  expect(libraryTexts).toEqual(Object.fromEntries(texts));
});

describe.each(libraryNames)('%s', (name) => {
  test('has no findings', async () => {
    const memory = new FilesInMemory({ 'a.joinery': `import "dryfit:${name}"` });
    const { findings } = await memory.examine('a.joinery');
    const { LangiumDocuments } = memory.services.shared.workspace;
    const { examine } = await import('../findings/examine.js');
    const library = LangiumDocuments.all.filter(({ uri }) => uri.scheme === 'dryfit').toArray();
    expect(library).toHaveLength(1);
    expect([
      ...findings,
      ...library.flatMap((document) => examine(document, memory.services.joinery).findings),
    ]).toEqual([]);
  });
});

test('every entry says where its figures come from', async () => {
  const { cabinets } = await read('connect biscuit20 by lines 70, 160, 250');
  const shop = cabinets[0]?.spec.shop;
  const entries = [shop?.materials, shop?.bands, shop?.machines, shop?.connectors].flatMap((map) => [
    ...(map?.values() ?? []),
  ]);
  expect(entries.length).toBeGreaterThan(30);
  expect(entries.filter(({ provenance }) => provenance === undefined).map(({ name }) => name)).toEqual([]);
});

test('figures that no source shows are marked as from memory', async () => {
  const { cabinets } = await read('connect biscuit20 by lines 70, 160, 250');
  const shop = cabinets[0]?.spec.shop;
  expect(shop?.connectors.get('biscuit20')?.provenance).toContain('plunge: from memory');
  expect(shop?.connectors.get('tenon8x40')?.provenance).toBe('from memory');
});

test('dowels go two thirds into the edge and one third into the face, 1 mm more each (woodweb.com, 1998)', async () => {
  const { cabinets } = await read('connect dowel8x30 by lines 50, 150, 250');
  const plunge = cabinets[0]?.spec.shop.connectors.get('dowel8x30')?.plunge;
  expect(`${plunge?.face} ${plunge?.edge}`).toBe('11 21');
});

test('a shop’s own machine takes the place of the library’s', async () => {
  const own = 'machine joiner { cutter 102  kerf 4  base to centre 10 }\n';
  const text = own + rack('connect biscuit20 by lines 70, 160, 250');
  const { cabinets } = await new FilesInMemory({ 'rack.joinery': text }).examine('rack.joinery');
  expect(cabinets[0]?.fit.joints[0]?.machine?.diameter.toNumber()).toBe(102);
});

test('tells which part of it has a name', () => {
  expect(libraryHolding('Connector', 'biscuit20')).toBe('connectors');
  expect(libraryHolding('Material', 'biscuit20')).toBeUndefined();
  expect(libraryHolding('Connector', '.*')).toBeUndefined();
  expect(libraryHolding('Connector', 'biscuit2')).toBeUndefined();
  expect(libraryHolding('Connector', 'a'.repeat(200_000))).toBeUndefined();
});
