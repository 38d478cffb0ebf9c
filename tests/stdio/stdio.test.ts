import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import {
  type ClientCapabilities,
  ConfigurationRequest,
  createProtocolConnection,
  DidOpenTextDocumentNotification,
  ErrorCodes,
  ExitNotification,
  HoverRequest,
  InitializedNotification,
  InitializeRequest,
  InlayHintRequest,
  type MarkupContent,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  RegistrationRequest,
  ResponseError,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bin = join(root, 'packages/cli/bin/dryfit-language-server.js');
let server: ChildProcess | undefined;
afterEach(() => server?.kill());

/** How an editor differs from the plainest. */
interface Editor {
  readonly capabilities?: ClientCapabilities;
  /** Options of its first message. */
  readonly options?: object;
  /** Takes what the server wants to be told of; every editor here refuses. */
  readonly refused?: string[];
}

/** Starts the command as another editor does, with nothing but what the protocol says. */
async function start(words: readonly string[], editor: Editor = {}) {
  const child = spawn(process.execPath, [bin, ...words], { stdio: ['pipe', 'pipe', 'inherit'] });
  server = child;
  const wire = createProtocolConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  const told: PublishDiagnosticsParams[] = [];
  let heard = () => {};
  wire.onNotification(PublishDiagnosticsNotification.type, (params) => {
    told.push(params);
    heard();
  });
  const { refused = [] } = editor;
  wire.onRequest(RegistrationRequest.type, ({ registrations }) => {
    for (const { method } of registrations) refused.push(method);
    return new ResponseError(ErrorCodes.MethodNotFound, 'this editor knows no such thing');
  });
  wire.onRequest(ConfigurationRequest.type, ({ items }) => items.map(() => null));
  wire.listen();
  const folder = pathToFileURL(join(root, 'examples'));
  const { capabilities } = await wire.sendRequest(InitializeRequest.type, {
    processId: process.pid,
    rootUri: folder.href,
    workspaceFolders: [{ uri: folder.href, name: 'examples' }],
    capabilities: { textDocument: { publishDiagnostics: { relatedInformation: true } }, ...editor.capabilities },
    initializationOptions: editor.options,
  });
  await wire.sendNotification(InitializedNotification.type, {});
  return {
    wire,
    child,
    capabilities,
    /** Opens a text and gives what the server says of it. */
    async open(name: string, text: string): Promise<PublishDiagnosticsParams> {
      const uri = `${folder.href}/${name}`;
      await wire.sendNotification(DidOpenTextDocumentNotification.type, {
        textDocument: { uri, languageId: 'joinery', version: 1, text },
      });
      for (;;) {
        const found = told.find((params) => params.uri === uri);
        if (found) return found;
        await new Promise<void>((resolve) => {
          heard = resolve;
        });
      }
    },
  };
}

const periodicals = readFileSync(join(root, 'examples/periodicals.joinery'), 'utf8');

test.each([['--stdio'], []])('speaks the protocol over standard input and output (%s)', async (...words) => {
  const { wire, child, capabilities, open } = await start(words);
  expect(capabilities).toMatchObject({
    hoverProvider: true,
    definitionProvider: true,
    documentFormattingProvider: true,
  });

  const broken = periodicals.replace('by deep5', 'by lines 60, 180, 270');
  const { uri, diagnostics } = await open('unsaved.joinery', broken);
  const near = diagnostics.find(({ code }) => code === 'slot-near-edge');
  expect(near?.message).toContain('5.16');
  expect(near?.range.start).toEqual({ line: 28, character: 2 });
  // A page of a check can only be shown by a client that says so.
  expect(near).not.toHaveProperty('codeDescription');

  const line = periodicals.split('\n').findIndex((each) => each.includes('butt shelf'));
  const hover = await wire.sendRequest(HoverRequest.type, {
    textDocument: { uri },
    position: { line, character: 3 },
  });
  expect(hover?.contents as MarkupContent).toHaveProperty('value', expect.stringContaining('38, 158, 248'));

  await wire.sendRequest(ShutdownRequest.type);
  await wire.sendNotification(ExitNotification.type);
  const [code] = child.exitCode === null ? await once(child, 'exit') : [child.exitCode];
  expect(code).toBe(0);
});

test('an editor that refuses to tell of changes has its findings all the same', async () => {
  const refused: string[] = [];
  const dynamic = { dynamicRegistration: true };
  const workspace = { configuration: true, didChangeConfiguration: dynamic, didChangeWatchedFiles: dynamic };
  const { child, open } = await start([], { capabilities: { workspace }, refused });
  const { diagnostics } = await open('unsaved.joinery', periodicals.replace('by deep5', 'by lines 60, 180, 270'));
  expect(diagnostics.length).toBeGreaterThan(0);
  expect(refused).toContain('workspace/didChangeConfiguration');
  expect(refused).toContain('workspace/didChangeWatchedFiles');
  expect(child.exitCode).toBe(null);
});

test('an editor that cannot be asked to tell of changes is not asked', async () => {
  const refused: string[] = [];
  const { open } = await start([], { capabilities: { workspace: { configuration: true } }, refused });
  await open('unsaved.joinery', periodicals);
  expect(refused).toEqual([]);
});

test.each([
  ['knows no settings', {}],
  ['has none for us', { workspace: { configuration: true } }],
])('settings of the first message hold in an editor that %s', async (_, capabilities) => {
  const hints = async (options?: object) => {
    const { wire, open, child } = await start([], { capabilities, ...(options && { options }) });
    const { uri } = await open('unsaved.joinery', periodicals);
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const found = await wire.sendRequest(InlayHintRequest.type, { textDocument: { uri }, range });
    child.kill();
    return (found ?? []).filter(({ label }) => /slots/.test(String(label))).length;
  };
  expect(await hints()).toBeGreaterThan(0);
  expect(await hints({ dryfit: { hints: { slotCounts: false } } })).toBe(0);
});

test('an editor that goes without a word is seen to go', async () => {
  const { child } = await start(['--stdio']);
  child.stdin?.end();
  const [code, signal] = await once(child, 'exit');
  expect([code, signal]).not.toEqual([0, null]);
});

test.each([
  [['--help'], 0, /standard input and output/],
  [['--version'], 0, /^\d+\.\d+\.\d+\n$/],
  [['--loud'], 2, /^$/],
])('%s', (words, code, out) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...words], { encoding: 'utf8' });
  expect(status).toBe(code);
  expect(stdout).toMatch(out);
  if (code !== 0) expect(stderr).toContain('"--loud" is no option');
});
