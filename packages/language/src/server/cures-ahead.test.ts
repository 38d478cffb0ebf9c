import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { Cancellation, TextDocument, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { afterEach, expect, test, vi } from 'vitest';
import { CodeActionTriggerKind } from 'vscode-languageserver-protocol';
import { Trial } from '../fixes/trial.js';
import { Cures } from './cures.js';
import { CuresAhead } from './cures-ahead.js';
import type { ServerDocumentBuilder } from './document-builder.js';
import { createJoineryServerServices } from './services.js';

const { None } = Cancellation.CancellationToken;
const folder = new URL('../../../../examples/', import.meta.url);
const text = readFileSync(new URL('periodicals.joinery', folder), 'utf8').replace(
  'rear set back 16',
  'rear set back 17',
);
const uri = URI.parse(new URL('ahead.joinery', folder).href);

/** A server with one open file in which something is found, and how often a change was tried on a copy. */
async function served() {
  const { shared, joinery } = createJoineryServerServices(NodeFileSystem);
  const { DocumentBuilder, LangiumDocuments, TextDocuments, WorkspaceManager } = shared.workspace;
  await WorkspaceManager.initializeWorkspace([]);
  DocumentBuilder.updateBuildOptions = { validation: true };
  TextDocuments.set(TextDocument.create(uri.toString(), 'joinery', 1, text));
  await DocumentBuilder.update([uri], []);
  const document = await LangiumDocuments.getOrCreateDocument(uri);
  const tries = vi.spyOn(Trial.prototype, 'examine');
  const cures = new Cures(joinery);
  const offered = async (words: string, triggerKind: CodeActionTriggerKind) => {
    const start = document.textDocument.positionAt(text.indexOf(words));
    const range = { start, end: start };
    const context = { diagnostics: [], triggerKind };
    const asked = { textDocument: { uri: uri.toString() }, range, context };
    return (await joinery.lsp.CodeActionProvider?.getCodeActions(document, asked)) ?? [];
  };
  const [finding] = joinery.editor.Examinations.of(document).findings;
  if (!finding) throw new Error('nothing is found');
  return {
    builder: DocumentBuilder as ServerDocumentBuilder,
    document,
    finding,
    joinery,
    cures,
    ahead: new CuresAhead(joinery, cures),
    offered,
    tries: () => tries.mock.calls.length,
  };
}

afterEach(() => vi.restoreAllMocks());

test('after the editor has asked by itself elsewhere, whoever asks at the finding waits for no trial', async () => {
  const { offered, tries } = await served();
  const seeking = vi.spyOn(CuresAhead.prototype, 'seek');
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

test('nothing is sought for nobody once somebody asks, or types', async () => {
  const { ahead, builder, document, tries } = await served();
  const before = tries();
  const seeking = ahead.seek(document, 0, 0);
  ahead.stop();
  await seeking;
  builder.expect(uri);
  await ahead.seek(document, 0, 0);
  expect(tries()).toBe(before);
});

test('a search begun for nobody is left off when it is called off, and goes on for who waits by then', async () => {
  const { ahead, cures, document, finding, tries } = await served();
  const before = tries();
  const until = async (count: number) => {
    while (tries() - before < count) await pause(1);
  };
  const seeking = ahead.seek(document, 0, 0);
  seeking.catch(() => undefined);
  await until(2);
  ahead.stop();
  await expect(seeking).rejects.toBeDefined();
  const alone = await served();
  const all = await alone.cures.of(alone.finding, alone.document, None);
  expect((await cures.of(finding, document, None)).map(({ title }) => title)).toEqual(all.map(({ title }) => title));
});

test('what is found nearest is sought first', async () => {
  const { cures, document, finding, joinery } = await served();
  const asked = vi.spyOn(cures, 'ahead').mockResolvedValue();
  const elsewhere = (start: number) => ({ ...finding, source: { ...finding.source, start } });
  const findings = [900, 300, 10, 420, 395, 800, 410].map(elsewhere);
  const examined = joinery.editor.Examinations.of(document);
  vi.spyOn(joinery.editor.Examinations, 'of').mockReturnValue({ ...examined, findings });
  await new CuresAhead(joinery, cures).seek(document, 400, 0);
  expect(asked.mock.calls.map(([{ source }]) => source.start)).toEqual([395, 410, 420, 300, 10]);
});
