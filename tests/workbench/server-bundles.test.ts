import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { type Message, NODES, pathOf, type Server, startInBrowser, startOnNode } from './server-bundles.js';

/** A folder that only the client can read, so that imports have to be asked for. */
const folder = 'shelf-of-files:/examples/';
const uri = `${folder}periodicals.joinery`;
const examples = new URL('../../examples/', import.meta.url);
const text = readFileSync(new URL('periodicals.joinery', examples), 'utf8');
const spoilt = text.replace('set back 16 from', 'set back 22 from');

test.each(NODES)('the desktop server gives findings and hovers on %s', async (name) => {
  await converse(startOnNode(pathOf(name)));
});

test('the browser server gives findings and hovers in a web worker', async () => {
  await converse(await startInBrowser());
});

async function converse(server: Server): Promise<void> {
  const stopped = answerFor(server);
  try {
    await server.send(request(1, 'initialize', { processId: null, rootUri: null, capabilities: {} }));
    const started = await server.receive((message) => message.id === 1 && message.method === undefined);
    expect(started.result).toMatchObject({ capabilities: { hoverProvider: true } });
    await server.send(notification('initialized', {}));
    await server.send(
      notification('textDocument/didOpen', { textDocument: { uri, languageId: 'joinery', version: 1, text: spoilt } }),
    );
    const published = await server.receive((message) => findings(message).length > 0);
    expect(findings(published).map(({ code, message }) => `${code}: ${message}`)).toEqual([
      expect.stringMatching(/^slot-near-edge: .*\b9\.16\b/),
    ]);

    const line = spoilt.split('\n').findIndex((row) => row.includes('butt shelf'));
    const position = { line, character: spoilt.split('\n')[line]?.indexOf('butt') };
    await server.send(request(2, 'textDocument/hover', { textDocument: { uri }, position }));
    const hover = await server.receive((message) => message.id === 2 && message.method === undefined);
    expect(JSON.stringify(hover.result)).toContain('42, 152, 242, 392, 472');
  } finally {
    stopped.abort();
    await server.stop();
  }
}

/** Plays the editor that has the files: answers what the server asks, until aborted. */
function answerFor(server: Server): AbortController {
  const control = new AbortController();
  const answered = new Set<number>();
  const next = async (): Promise<void> => {
    const asked = await server.receive(
      ({ id, method }) => id !== undefined && method !== undefined && !answered.has(id),
    );
    if (control.signal.aborted || asked.id === undefined) return;
    answered.add(asked.id);
    await server.send({ jsonrpc: '2.0', id: asked.id, result: answerTo(asked) });
    await next();
  };
  // A server that ends fails the conversation itself; here it only ends the answering.
  next().catch(() => control.abort());
  return control;
}

function answerTo({ method, params }: Message): unknown {
  const name = params?.uri?.startsWith(folder) ? params.uri.slice(folder.length) : undefined;
  const file = name === undefined ? undefined : fileURLToPath(new URL(name, examples));
  const there = file !== undefined && existsSync(file);
  if (method === 'joinery/readFile') return there ? readFileSync(file, 'utf8') : null;
  if (method === 'joinery/stat') return there ? { uri: params?.uri, isFile: true, isDirectory: false } : null;
  if (method === 'joinery/readDirectory') return [];
  return null;
}

function findings(message: Message): { message: string; code?: string | number }[] {
  const ours = message.method === 'textDocument/publishDiagnostics' && message.params?.uri === uri;
  return ours ? (message.params?.diagnostics ?? []) : [];
}

function request(id: number, method: string, params: object): object {
  return { jsonrpc: '2.0', id, method, params };
}

function notification(method: string, params: object): object {
  return { jsonrpc: '2.0', method, params };
}
