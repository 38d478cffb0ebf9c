import { afterEach, expect, test } from 'vitest';
import { CancellationTokenSource, LSPErrorCodes } from 'vscode-languageserver-protocol';
import { connect, example, exampleUri } from './client.fixture.js';
import { DRAWINGS, type DrawnFile, SLOT_TABLE, SLOTS, type SlotRows } from './protocol.js';

const text = example('periodicals.joinery');
const broken = text.replace('bottom 350 above base.bottom', 'bottom 350 ab');

let client: Awaited<ReturnType<typeof connect>>;
afterEach(() => client.end());

test('how a file stands is told after each check', async () => {
  client = await connect();
  expect(await client.type('served.joinery', text)).toMatchObject({
    state: 'fits',
    errors: 0,
    warnings: 0,
    units: 'mm',
    cabinets: ['Periodicals'],
  });
  expect(await client.type('served.joinery', text.replace('back 16', 'back 15'))).toMatchObject({
    state: 'findings',
    errors: 1,
  });
  expect(await client.type('served.joinery', broken)).toMatchObject({ state: 'broken' });
});

test('a file is told anew when one that it draws on has changed', async () => {
  client = await connect();
  await client.type('served.joinery', text);
  const told = client.next(({ uri, state }) => uri === exampleUri('served.joinery') && state === 'findings');
  await client.type('shop.joinery', example('shop.joinery').replace(/spacers? .*/, 'spacers 6'));
  expect((await told).errors).toBeGreaterThan(0);
});

test('the drawing of a broken text is that of the last whole one, its places where they now are', async () => {
  client = await connect();
  await client.type('served.joinery', text);
  const whole = await client.ask<DrawnFile>(DRAWINGS, 'served.joinery');
  expect(whole).toMatchObject({ version: 1, broken: false, stale: false, workedOut: true });
  await client.type('served.joinery', broken);
  const stale = await client.ask<DrawnFile>(DRAWINGS, 'served.joinery');
  expect(stale).toMatchObject({ version: 2, broken: true, stale: true });
  expect(stale.cabinets.map(({ scene }) => scene)).toEqual(whole.cabinets.map(({ scene }) => scene));
  // A slip that takes a line more: what stands below it is found a line further down.
  await client.type('served.joinery', text);
  await client.type('served.joinery', text.replace('    width 6', '    width\n    6 dep'));
  const longer = await client.ask<DrawnFile>(DRAWINGS, 'served.joinery');
  const line = (drawn: DrawnFile, shape: string) => drawn.cabinets[0]?.places[shape]?.[0]?.range.start.line ?? 0;
  expect(line(longer, 'part lh')).toBe(line(whole, 'part lh'));
  expect(line(longer, 'joint shelf / lh')).toBe(line(whole, 'joint shelf / lh') + 1);
});

test('nothing is worked out for a drawing while joinery is off', async () => {
  client = await connect({ joinery: false });
  await client.type('served.joinery', text);
  expect(await client.ask<DrawnFile>(DRAWINGS, 'served.joinery')).toMatchObject({ workedOut: false, cabinets: [] });
  expect(await client.ask<SlotRows>(SLOTS, 'served.joinery')).toMatchObject({ workedOut: false, rows: [] });
});

test('a file that is not open is drawn as well, and one that is not there is nothing', async () => {
  client = await connect();
  const drawn = await client.ask<DrawnFile>(DRAWINGS, 'bookcase.joinery');
  expect(drawn.cabinets.length).toBeGreaterThan(0);
  expect(await client.ask<DrawnFile | null>(DRAWINGS, 'missing.joinery')).toBeNull();
  expect(await client.ask<string | null>(SLOT_TABLE, 'missing.joinery', { as: 'csv' })).toBeNull();
});

test('of a file that is closed without its changes being kept the one on the disk is drawn, and that is told', async () => {
  client = await connect();
  await client.type('periodicals.joinery', text.replace('wide = 600', 'wide = 700'));
  const width = async () =>
    (await client.ask<DrawnFile>(DRAWINGS, 'periodicals.joinery')).cabinets[0]?.scene.outside?.[0];
  expect(await width()).toBe('700');
  expect(client.reads).toEqual([]);
  await client.close('periodicals.joinery');
  await expect.poll(() => client.reads).toContain(exampleUri('periodicals.joinery'));
  expect(await width()).toBe('600');
  // Nobody has asked for this one.
  await client.type('bookcase.joinery', example('bookcase.joinery'));
  await client.close('bookcase.joinery');
  await client.ask<DrawnFile>(DRAWINGS, 'periodicals.joinery');
  expect(client.reads).not.toContain(exampleUri('bookcase.joinery'));
});

test('each row of the slot table has its shapes in the drawing, and its text', async () => {
  client = await connect();
  await client.type('served.joinery', text);
  const [slots, drawn] = [
    await client.ask<SlotRows>(SLOTS, 'served.joinery'),
    await client.ask<DrawnFile>(DRAWINGS, 'served.joinery'),
  ];
  // As written, and as a job of the file has it made.
  expect(drawn.cabinets.map(({ scene }) => scene.title)).toEqual(['Periodicals', 'Periodicals (wide 450, deep 320)']);
  for (const { scene, places } of drawn.cabinets) {
    const drawnSlots = Object.keys(places).filter((shape) => shape.startsWith('slot '));
    const rows = slots.rows.filter(({ cabinet }) => cabinet === scene.title);
    expect(rows.flatMap(({ shapes }) => shapes).sort()).toEqual(drawnSlots.sort());
  }
  expect(slots.rows.every((row) => row.places.length >= 2 && row.cells.length === slots.columns.length)).toBe(true);
});

test('lengths are printed in the units of the file and sorted by size, lists of them by the first', async () => {
  client = await connect();
  await client.type('served.joinery', `units in\n${text}`.replace(/= (600|720|560)/g, '= 24').replace('350', '12'));
  const slots = await client.ask<SlotRows>(SLOTS, 'served.joinery');
  const column = (heading: string) => slots.columns.findIndex((one) => one.heading === heading);
  const cell = slots.rows[0]?.cells[column('From datum (in)')];
  expect(cell?.text).toMatch(/^2 3\/4/);
  expect(cell?.sort).toBeCloseTo(70);
});

test.each([
  ['drawing', DRAWINGS],
  ['slot table', SLOTS],
])('a %s that is no longer wanted is not made, and the next one is', async (_, request) => {
  client = await connect();
  await client.type('served.joinery', text);
  const stop = new CancellationTokenSource();
  const first = client.askUntil(request, 'served.joinery', stop.token);
  stop.cancel();
  const second = client.ask<{ version: number }>(request, 'served.joinery');
  await expect(first).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  expect((await second).version).toBe(1);
});
