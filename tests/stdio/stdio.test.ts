import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import {
  createProtocolConnection,
  DidOpenTextDocumentNotification,
  ExitNotification,
  HoverRequest,
  InitializedNotification,
  InitializeRequest,
  type MarkupContent,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bin = join(root, 'packages/cli/bin/dryfit-language-server.js');
let server: ChildProcess | undefined;
afterEach(() => server?.kill());

/** Starts the command as another editor does, with nothing but what the protocol says. */
async function start(...words: string[]) {
  const child = spawn(process.execPath, [bin, ...words], { stdio: ['pipe', 'pipe', 'inherit'] });
  server = child;
  const wire = createProtocolConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  const told: PublishDiagnosticsParams[] = [];
  let heard = () => {};
  wire.onNotification(PublishDiagnosticsNotification.type, (params) => {
    told.push(params);
    heard();
  });
  wire.listen();
  const folder = pathToFileURL(join(root, 'examples'));
  const { capabilities } = await wire.sendRequest(InitializeRequest.type, {
    processId: process.pid,
    rootUri: folder.href,
    workspaceFolders: [{ uri: folder.href, name: 'examples' }],
    capabilities: { textDocument: { publishDiagnostics: { relatedInformation: true } } },
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
  const { wire, child, capabilities, open } = await start(...words);
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

test('an editor that goes without a word is seen to go', async () => {
  const { child } = await start('--stdio');
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
