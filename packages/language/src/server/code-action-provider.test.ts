import { readFileSync } from 'node:fs';
import { TextDocument, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { expect, test } from 'vitest';
import type { CodeAction } from 'vscode-languageserver-protocol';
import { createJoineryServerServices } from './services.js';

const folder = new URL('../../../../examples/', import.meta.url);
const text = readFileSync(new URL('periodicals.joinery', folder), 'utf8').replace(
  'rear set back 16',
  'rear set back 17',
);
const uri = URI.parse(new URL('offered.joinery', folder).href);

/** What is offered where some words stand. */
async function actionsAt(content: string, words: string, only?: string[]) {
  const { shared, joinery } = createJoineryServerServices(NodeFileSystem);
  const { DocumentBuilder, LangiumDocuments, TextDocuments, WorkspaceManager } = shared.workspace;
  await WorkspaceManager.initializeWorkspace([]);
  DocumentBuilder.updateBuildOptions = { validation: true };
  TextDocuments.set(TextDocument.create(uri.toString(), 'joinery', 1, content));
  await DocumentBuilder.update([uri], []);
  const document = await LangiumDocuments.getOrCreateDocument(uri);
  const start = document.textDocument.positionAt(content.indexOf(words));
  const diagnostics = document.diagnostics ?? [];
  const found = await joinery.lsp.CodeActionProvider?.getCodeActions(document, {
    textDocument: { uri: uri.toString() },
    range: { start, end: start },
    context: { diagnostics, ...(only ? { only } : {}) },
  });
  const after = (action: CodeAction) =>
    TextDocument.applyEdits(document.textDocument, action.edit?.changes?.[uri.toString()] ?? []);
  return { actions: (found ?? []) as CodeAction[], after };
}

test('the cures of a finding, with the finding they are for', async () => {
  const { actions, after } = await actionsAt(text, 'butt shelf');
  const [first] = actions;
  expect(first?.title).toBe('Cut a block 23 wide for this joint: spacer cut');
  expect(first?.isPreferred).toBe(true);
  expect(first?.diagnostics?.map(({ code }) => code)).toEqual(['spacer-not-in-stock']);
  expect(first && after(first)).toContain('    flush front\n    spacer cut\n  }');
  expect(actions.map(({ kind }) => kind)).toEqual(actions.map(() => 'quickfix'));
});

test('a shop’s file is changed where the shop is to have something', async () => {
  const { actions } = await actionsAt(text, 'butt shelf');
  const add = actions.find(({ title }) => title.startsWith('Add a spacer'));
  expect(Object.keys(add?.edit?.changes ?? {}).map((file) => file.split('/').pop())).toEqual(['shop.joinery']);
});

test('nothing is offered where nothing is found, or for other kinds of action', async () => {
  expect((await actionsAt(text, 'cabinet Periodicals')).actions).toEqual([]);
  expect((await actionsAt(text, 'butt shelf', ['refactor'])).actions).toEqual([]);
});
