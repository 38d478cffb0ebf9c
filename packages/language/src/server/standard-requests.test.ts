import { PassThrough } from 'node:stream';
import { Cancellation, EmptyFileSystem, OperationCancelled } from 'langium';
import { startLanguageServer } from 'langium/lsp';
import { afterEach, describe, expect, test } from 'vitest';
import { createConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { createProtocolConnection, type ProtocolConnection } from 'vscode-languageserver-protocol/node';
import { serve, uriOf } from './served.fixture.js';
import { createJoineryServerServices } from './services.js';

const SHOP = 'material ply { thickness 18 }\n';
const RACK = 'import "shop.joinery"\ncabinet Rack {\n  part a : upright of ply\n}\njob J { 3 of Rack }\n';

const clients: ProtocolConnection[] = [];
afterEach(() => {
  for (const client of clients.splice(0)) client.dispose();
});

/** A server that a client talks to, with two files open. */
async function talk() {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const connection = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  startLanguageServer(createJoineryServerServices({ connection, ...EmptyFileSystem }).shared);
  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  clients.push(client);
  const asked: string[] = [];
  for (const method of ['workspace/inlayHint/refresh', 'workspace/codeLens/refresh'])
    client.onRequest(method, () => void asked.push(method));
  client.onRequest('client/registerCapability', () => null);
  client.onRequest('workspace/configuration', () => [null]);
  client.listen();
  const refreshSupport = { refreshSupport: true };
  const { capabilities } = await client.sendRequest<{ capabilities: Record<string, unknown> }>('initialize', {
    processId: null,
    rootUri: null,
    capabilities: { workspace: { inlayHint: refreshSupport, codeLens: refreshSupport } },
  });
  await client.sendNotification('initialized', {});
  for (const [path, text] of Object.entries({ 'shop.joinery': SHOP, 'rack.joinery': RACK })) {
    await client.sendNotification('textDocument/didOpen', {
      textDocument: { uri: `${uriOf(path)}`, languageId: 'joinery', version: 1, text },
    });
  }
  const textDocument = { uri: `${uriOf('rack.joinery')}` };
  const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
  type Asked = { label: string; data: unknown; tooltip?: { value: string }; command?: { title: string } };
  const hints = () => client.sendRequest<Asked[]>('textDocument/inlayHint', { textDocument, range });
  return { client, capabilities, asked, textDocument, hints };
}

describe('over the protocol', () => {
  test('the server says what it can do', async () => {
    const { capabilities } = await talk();
    expect(capabilities).toMatchObject({
      selectionRangeProvider: true,
      inlayHintProvider: { resolveProvider: true },
      codeLensProvider: { resolveProvider: true },
      renameProvider: { prepareProvider: true },
      semanticTokensProvider: { range: true, full: { delta: true } },
      documentOnTypeFormattingProvider: { firstTriggerCharacter: '}' },
      workspaceSymbolProvider: {},
    });
  });

  test('hints and lenses say why and how much when they are asked', async () => {
    const { client, textDocument, hints } = await talk();
    const [hint] = await hints();
    expect(hint?.label).toBe('18 × ? × ?');
    const resolved = await client.sendRequest<typeof hint>('inlayHint/resolve', hint);
    expect(resolved?.tooltip?.value).toContain('upright part');
    const lenses = await client.sendRequest<NonNullable<typeof hint>[]>('textDocument/codeLens', { textDocument });
    const told = [];
    for (const lens of lenses) told.push((await client.sendRequest<typeof lens>('codeLens/resolve', lens)).command);
    const rack = [textDocument.uri, 'Rack'];
    expect(told).toMatchObject([
      { title: expect.stringMatching(/^outside not fixed, 0 slots, /), command: 'dryfit.openDrawing', arguments: rack },
      { title: 'slot table', command: 'dryfit.openSlotTable', arguments: rack },
      { title: '3 cabinets, 3 parts', command: '' },
      { title: 'plan', command: 'dryfit.openPlan', arguments: [textDocument.uri, 'J'] },
    ]);
    const position = { line: 2, character: 8 };
    const [ranges] = await client.sendRequest<{ range: unknown; parent: unknown }[]>('textDocument/selectionRange', {
      textDocument,
      positions: [position],
    });
    expect(ranges?.parent).toBeDefined();
  });

  test('another file that is edited has the hints of this one asked for again', async () => {
    const { client, asked, hints } = await talk();
    await hints();
    const before = asked.length;
    await client.sendNotification('textDocument/didChange', {
      textDocument: { uri: `${uriOf('shop.joinery')}`, version: 2 },
      contentChanges: [{ text: SHOP.replace('18', '21') }],
    });
    await expect.poll(() => asked.slice(before)).toContain('workspace/inlayHint/refresh');
    expect((await hints())[0]?.label).toBe('21 × ? × ?');
  });
});

test('whoever no longer wants an answer gets none', async () => {
  const { joinery, document } = await serve({ 'shop.joinery': SHOP, 'rack.joinery': RACK });
  const token = Cancellation.CancellationToken.Cancelled;
  const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
  const textDocument = { uri: `${uriOf('rack.joinery')}` };
  const rack = document('rack.joinery');
  const { lsp } = joinery;
  for (const ask of [
    async () => lsp.InlayHintProvider?.getInlayHints(rack, { textDocument, range }, token),
    async () => lsp.SemanticTokenProvider?.semanticHighlight(rack, { textDocument }, token),
    async () => lsp.DocumentSymbolProvider?.getSymbols(rack, { textDocument }, token),
    async () => lsp.FoldingRangeProvider?.getFoldingRanges(rack, { textDocument }, token),
    async () =>
      lsp.RenameProvider?.rename(rack, { textDocument, position: { line: 2, character: 7 }, newName: 'b' }, token),
  ])
    await expect(ask()).rejects.toBe(OperationCancelled);
});
