import { planWork } from '@dryfit/engine';
import { layout, planTables } from '@dryfit/output';
import { afterEach, expect, test } from 'vitest';
import { CancellationTokenSource, LSPErrorCodes } from 'vscode-languageserver-protocol';
import { connect, example, exampleUri } from './client.fixture.js';
import { PLAN, type PlannedFile, type TextPlace } from './protocol.js';
import { serve } from './served.fixture.js';

const text = example('periodicals.joinery');
const broken = text.replace('bottom 350 above base.bottom', 'bottom 350 ab');

let client: Awaited<ReturnType<typeof connect>> | undefined;
afterEach(async () => {
  await client?.end();
  client = undefined;
});

/** The words that a place of the plan leads to, in one of the texts given by their names. */
function wordsAt({ uri, range: { start, end } }: TextPlace, texts: Readonly<Record<string, string>>): string {
  const [, found = ''] = Object.entries(texts).find(([name]) => uri === exampleUri(name)) ?? [];
  const lines = found.split('\n').slice(start.line, end.line + 1);
  const last = lines.length - 1;
  lines[last] = (lines[last] ?? '').slice(0, end.character);
  lines[0] = (lines[0] ?? '').slice(start.character);
  return lines.join('\n');
}

test('a plan says what the command line says, and leads to joints, parts and the shop', async () => {
  client = await connect();
  await client.type('served.joinery', text);
  const { plan, jobs } = await client.ask<PlannedFile>(PLAN, 'served.joinery');
  const served = await serve({ 'rack.joinery': text, 'shop.joinery': example('shop.joinery') });
  const [job] = served.joinery.editor.Examinations.of(served.document('rack.joinery')).jobs;
  const items = job?.lines ?? [];
  const planned = await planWork(items);
  const [overview, ...tables] = planTables({ title: ['job Library'], items, plan: planned, errors: 0 });
  expect(jobs).toEqual(['Library']);
  expect(plan?.setUps.map(({ rows }) => rows.map(({ cells }) => cells))).toEqual(
    tables.slice(0, planned.setUps.length).map((table) => layout(table, { units: 'mm' }).rows),
  );
  expect(plan?.setUps.map(({ slots }) => String(slots))).toEqual(
    overview &&
      layout(overview, { units: 'mm' }).rows.map(
        (row) => row[overview.columns.findIndex(({ heading }) => heading === 'Slots')],
      ),
  );
  expect(plan).toMatchObject({ job: 'Library', proven: true });
  expect(plan?.warning).toBeUndefined();
  const texts = { 'served.joinery': text, 'shop.joinery': example('shop.joinery') };
  for (const { rows, settings } of plan?.setUps ?? []) {
    for (const { places, keys, cells } of rows) {
      expect(keys.length).toBeGreaterThan(0);
      const [joint, ...others] = places.map((place) => wordsAt(place, texts));
      expect(joint).toMatch(/^butt /);
      const parts = (cells[1] ?? '').split(', ');
      expect(others.filter((words) => parts.includes(words)).length).toBe(parts.length);
    }
    const leads = (name: string) => {
      const [place] = settings.find((one) => one.name === name)?.places ?? [];
      return place && wordsAt(place, texts);
    };
    expect(leads('machine')).toMatch(/^machine /);
    expect(leads('base to centre')).toMatch(/^machine /);
    expect(leads('pattern')).toMatch(/^pattern deep5/);
    expect(leads('stop')).toMatch(/^butt /);
  }
  // Nothing that is milled is left out, and nothing is there twice.
  const keys = plan?.setUps.flatMap(({ rows }) => rows.flatMap((row) => row.keys)) ?? [];
  const milled = items.flatMap(({ result }, item) =>
    result.fit.joints.flatMap(({ id, halves }) =>
      halves.flatMap(({ part, surface, slots }) =>
        // Both lines of the job are of the one cabinet: the first and the second of its name.
        slots.length > 0 ? [`Periodicals ${item} ${part} ${surface} ${id}`] : [],
      ),
    ),
  );
  expect(milled.length).toBeGreaterThan(20);
  expect([...keys].sort()).toEqual(milled.sort());
});

test('a changed stop shows in the plan, what is only moved about does not have it made anew', async () => {
  client = await connect();
  await client.type('served.joinery', text);
  const before = await client.ask<PlannedFile>(PLAN, 'served.joinery');
  await client.type('served.joinery', `// Moved down.\n\n${text}`);
  const moved = await client.ask<PlannedFile>(PLAN, 'served.joinery');
  const bare = ({ plan }: PlannedFile) => plan?.setUps.map(({ rows }) => rows.map(({ cells, keys }) => [cells, keys]));
  expect(bare(moved)).toEqual(bare(before));
  const line = ({ plan }: PlannedFile) => plan?.setUps[0]?.rows[0]?.places[0]?.range.start.line ?? 0;
  expect(line(moved)).toBe(line(before) + 2);
  const settings = ({ plan }: PlannedFile) =>
    plan?.setUps.flatMap((setUp) => setUp.settings.filter(({ name }) => name === 'spacer').map(({ words }) => words));
  expect(settings(before)).toContain('12 + 10 = 22');
  await client.type('served.joinery', text.replace('back 16', 'back 14'));
  expect(settings(await client.ask<PlannedFile>(PLAN, 'served.joinery'))).not.toContain('12 + 10 = 22');
});

test('another set of figures for changing makes another plan, although no cabinet has changed', async () => {
  client = await connect();
  await client.type('served.joinery', text);
  const change = async () => (await client?.ask<PlannedFile>(PLAN, 'served.joinery'))?.plan?.change;
  const before = await change();
  await client.type('shop.joinery', `${example('shop.joinery')}\nchanges {\n  stop 60 min\n}\n`);
  expect(Number(await change())).toBeGreaterThan(Number(before) + 50);
});

test('while the text is broken the plan is that of the last whole one, its places where they now are', async () => {
  client = await connect();
  await client.type('served.joinery', text);
  const whole = await client.ask<PlannedFile>(PLAN, 'served.joinery');
  expect(whole).toMatchObject({ version: 1, broken: false, stale: false });
  await client.type('served.joinery', text.replace('    width 6', '    width\n    6 dep'));
  const stale = await client.ask<PlannedFile>(PLAN, 'served.joinery');
  expect(stale).toMatchObject({ version: 2, broken: true, stale: true, jobs: ['Library'] });
  expect(stale.plan?.setUps.length).toBe(whole.plan?.setUps.length);
  expect(stale.plan?.places[0]?.range.start.line).toBe((whole.plan?.places[0]?.range.start.line ?? 0) + 1);
});

test('a text that was never whole is planned as far as it can be read', async () => {
  client = await connect();
  await client.type('served.joinery', broken);
  expect(await client.ask<PlannedFile>(PLAN, 'served.joinery')).toMatchObject({ broken: true, stale: false });
});

test('a plan with errors says that nothing is to be milled, also where they are told as notes', async () => {
  client = await connect({ severity: { 'spacer-not-in-stock': 'info' } });
  await client.type('served.joinery', text.replace('back 16', 'back 15'));
  const { plan } = await client.ask<PlannedFile>(PLAN, 'served.joinery');
  expect(plan?.warning).toMatch(/^1 error was found; do not cut or mill/);
});

test('the job that is asked for is planned, the first one otherwise; without one or without joinery there is nothing', async () => {
  client = await connect();
  await client.type('served.joinery', `${text}\njob Annex {\n  1 of Periodicals\n}\n`);
  const job = async (name?: string) =>
    (await client?.ask<PlannedFile>(PLAN, 'served.joinery', { job: name }))?.plan?.job;
  expect([await job(), await job('Annex'), await job('Gone')]).toEqual(['Library', 'Annex', 'Library']);
  await client.type('served.joinery', text.replace(/^job [\s\S]*/m, ''));
  const none = await client.ask<PlannedFile>(PLAN, 'served.joinery');
  expect([none.jobs, none.plan]).toEqual([[], undefined]);
  expect(await client.ask<PlannedFile | null>(PLAN, 'missing.joinery')).toBeNull();
});

test('a plan that is no longer wanted is not made, and the next one is', async () => {
  client = await connect();
  await client.type('served.joinery', text);
  const stop = new CancellationTokenSource();
  const first = client.askUntil(PLAN, 'served.joinery', stop.token);
  stop.cancel();
  const second = client.ask<PlannedFile>(PLAN, 'served.joinery');
  await expect(first).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  expect((await second).plan?.job).toBe('Library');
});
