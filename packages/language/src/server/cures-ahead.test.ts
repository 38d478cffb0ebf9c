import { Cancellation, OperationCancelled } from 'langium';
import { afterEach, expect, test, vi } from 'vitest';
import { CodeActionTriggerKind } from 'vscode-languageserver-protocol';
import { Trial } from '../fixes/trial.js';
import { found, text, uri } from './cures.fixture.js';
import { Cures } from './cures.js';
import { CuresAhead } from './cures-ahead.js';
import type { ServerDocumentBuilder } from './document-builder.js';

/** A busy machine takes its time. */
const PATIENT = { timeout: 60_000, interval: 1 };
const { None } = Cancellation.CancellationToken;
/** As it is when nobody counts. */
const { examine } = Trial.prototype;
/** A server with one open file in which something is found, and how often a change was tried on a copy. */
async function served() {
  const { shared, joinery, document, finding } = await found();
  const tries = vi.spyOn(Trial.prototype, 'examine');
  const cures = new Cures(joinery);
  const ahead = new CuresAhead(joinery, cures, 0);
  const offered = async (words: string, triggerKind: CodeActionTriggerKind) => {
    const start = document.textDocument.positionAt(text.indexOf(words));
    const range = { start, end: start };
    const context = { diagnostics: [], triggerKind };
    const asked = { textDocument: { uri: uri.toString() }, range, context };
    return (await joinery.lsp.CodeActionProvider?.getCodeActions(document, asked)) ?? [];
  };
  return {
    builder: shared.workspace.DocumentBuilder as ServerDocumentBuilder,
    document,
    finding,
    joinery,
    cures,
    ahead,
    around: (offset: number) => ahead.around(document, offset),
    offered,
    tries: () => tries.mock.calls.length,
  };
}

afterEach(() => vi.restoreAllMocks());

test('after the editor has asked by itself elsewhere, whoever asks at the finding waits for no trial', async () => {
  const { offered, tries } = await served();
  const seeking = vi.spyOn(CuresAhead.prototype, 'around');
  const preparing = vi.spyOn(Cures.prototype, 'prepare');
  expect(await offered('cabinet Periodicals', CodeActionTriggerKind.Automatic)).toEqual([]);
  const done = [...seeking.mock.results, ...preparing.mock.results].map(({ value }) => value);
  expect(done).toHaveLength(2);
  await Promise.all(done);
  const seen = tries();
  expect(seen).toBeGreaterThan(1);
  expect((await offered('butt shelf', CodeActionTriggerKind.Invoked)).length).toBeGreaterThan(1);
  expect(tries()).toBe(seen);
});

test('a text that has been examined anew has its cures sought, where it was asked about before', async () => {
  const { around, builder, tries } = await served();
  await around(0);
  const before = tries();
  const asked = vi.spyOn(Cures.prototype, 'ahead');
  await builder.update([uri], []);
  await vi.waitFor(() => expect(asked).toHaveBeenCalled(), PATIENT);
  await Promise.all(asked.mock.results.map(({ value }) => value));
  expect(tries()).toBeGreaterThan(before);
});

test('the same is sought once, and nothing while somebody types', async () => {
  const { around, builder, tries } = await served();
  await around(0);
  const once = tries();
  await around(0);
  builder.expect(uri);
  await around(0);
  expect(tries()).toBe(once);
});

test('a search begun for nobody is left off when somebody asks, and goes on for who waits by then', async () => {
  const { ahead, around, cures, document, finding, tries } = await served();
  let letGo = () => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  // From the second trial on they are held, so that the search has not ended when it is left.
  vi.spyOn(Trial.prototype, 'examine').mockImplementation(async function (this: Trial, ...asked) {
    if (tries() > 1) await held;
    return examine.apply(this, asked);
  });
  const left = around(0);
  await vi.waitFor(() => expect(tries()).toBe(2), PATIENT);
  ahead.stop();
  await expect(left).rejects.toBe(OperationCancelled);
  const waiting = cures.of(finding, document, None);
  letGo();
  const sought = await waiting;
  const together = tries();
  const alone = await served();
  const all = await alone.cures.of(alone.finding, alone.document, None);
  expect(sought.map(({ title }) => title)).toEqual(all.map(({ title }) => title));
  // It went on where it was: nothing was tried twice.
  expect(together).toBeGreaterThan(2);
  expect(together).toBe(tries() - together);
});

test('what is found nearest is sought first', async () => {
  const { around, cures, document, finding, joinery } = await served();
  const asked = vi.spyOn(cures, 'ahead').mockResolvedValue();
  const elsewhere = (start: number) => ({ ...finding, source: { ...finding.source, start } });
  const findings = [900, 300, 10, 420, 395, 800, 410].map(elsewhere);
  const examined = joinery.editor.Examinations.of(document);
  vi.spyOn(joinery.editor.Examinations, 'of').mockReturnValue({ ...examined, findings });
  await around(400);
  expect(asked.mock.calls.map(([{ source }]) => source.start)).toEqual([395, 410, 420, 300, 10]);
});
