import { Cancellation, OperationCancelled } from 'langium';
import { expect, test, vi } from 'vitest';
import { found, uri } from './cures.fixture.js';
import { Cures } from './cures.js';
import type { ServerDocumentBuilder } from './document-builder.js';

const { None } = Cancellation.CancellationToken;

/** A server with one open file that has a finding, and how often a change was tried on a copy. */
async function served() {
  const { shared, joinery, document, finding } = await found();
  const cures = new Cures(joinery);
  const tries = vi.spyOn(cures.trial, 'examine');
  const seek = (token = None) => cures.of(finding, document, token);
  const prepare = () => cures.prepare(document, 0);
  return {
    prepare,
    builder: shared.workspace.DocumentBuilder as ServerDocumentBuilder,
    seek,
    tries: () => tries.mock.calls.length,
  };
}

test('cures are sought once, however often they are asked for', async () => {
  const { seek, tries } = await served();
  const [once, meanwhile] = await Promise.all([seek(), seek()]);
  const tried = tries();
  expect(once.length).toBeGreaterThan(0);
  expect(meanwhile).toEqual(once);
  expect(await seek()).toEqual(once);
  expect(tries()).toBe(tried);
});

test('a question that is called off fails at once, and its search serves the next one', async () => {
  const { seek, tries } = await served();
  const source = new Cancellation.CancellationTokenSource();
  const calledOff = seek(source.token);
  source.cancel();
  await expect(calledOff).rejects.toBe(OperationCancelled);
  const before = tries();
  const cures = await seek();
  expect(cures.length).toBeGreaterThan(0);
  const once = tries();
  const { seek: alone, tries: triesAlone } = await served();
  await alone();
  expect([before, once]).toEqual([0, triesAlone()]);
});

test('the copies are made ready once, but not while somebody types', async () => {
  const { builder, prepare, tries } = await served();
  builder.expect(uri);
  await prepare();
  expect(tries()).toBe(0);
  await builder.update([uri], []);
  await Promise.all([prepare(), prepare()]);
  expect(tries()).toBe(1);
  await prepare();
  expect(tries()).toBe(1);
});

test('a search is left off when an edit is on its way, and begins anew with the text', async () => {
  const { builder, seek } = await served();
  const overtaken = seek();
  builder.expect(uri);
  await expect(overtaken).rejects.toBe(OperationCancelled);
  await builder.update([uri], []);
  expect((await seek()).length).toBeGreaterThan(0);
});
