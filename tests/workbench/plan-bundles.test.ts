import type { PlannedFile } from '@dryfit/language/protocol';
import { expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { NODES, pathOf, type Server, startInBrowser, startOnNode } from './server-bundles.js';

const uri = 'untitled:racks.joinery';

/** Racks whose shelves stand at so many heights that no order of their set-ups is told at a glance. */
const heights = Array.from({ length: 30 }, (_, i) => 200 + 15 * i);
const text = exampleText('periodicals.joinery')
  .replace('import "shop.joinery"', '')
  .replace('parameter deep = 560', 'parameter deep = 560\n  parameter up = 350')
  .replace('bottom 350 above', 'bottom up above')
  .replace(/job [\s\S]*/, `job Racks {\n${heights.map((up) => `  1 of Periodicals(up = ${up})`).join('\n')}\n}\n`);
const shop = exampleText('shop.joinery').replace(/^units mm$/m, '');
const whole = text.replace('units mm\n', `units mm\n${shop}\n`);

test.each(NODES)('the desktop server plans on a thread with the solver that is shipped, on %s', async (name) => {
  await plan(startOnNode(pathOf(name)));
});

test('the browser server plans on a worker with the solver that is shipped', async () => {
  const server = await startInBrowser();
  await plan(server, server.later);
});

/** @param later where a server in a browser finds what it loads late */
async function plan(server: Server, later?: string): Promise<void> {
  try {
    const params = { processId: null, rootUri: null, capabilities: {}, initializationOptions: { dryfit: { later } } };
    await ask(server, 1, 'initialize', params);
    await server.send({ jsonrpc: '2.0', method: 'initialized', params: {} });
    const textDocument = { uri, languageId: 'joinery', version: 1, text: whole };
    await server.send({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: { textDocument } });
    // Before it has been read, a server would ask for what lies under that name.
    await server.receive(({ method }) => method === 'dryfit/fitState');
    const planned = (await ask(server, 2, 'dryfit/plan', { textDocument: { uri } })) as PlannedFile;
    const { setUps = [], proven, warning } = planned.plan ?? {};
    expect(warning).toBeUndefined();
    // Beyond what is told from the sets of set-ups visited: the plain bound of a server without the solver proves nothing.
    expect(setUps.length).toBeGreaterThan(heights.length);
    expect(proven).toBe(true);
    const stops = setUps.flatMap(({ settings }) => settings.filter(({ name }) => name === 'stop'));
    expect(new Set(stops.map(({ words }) => words)).size).toBeGreaterThan(heights.length);
  } finally {
    await server.stop();
  }
}

async function ask(server: Server, id: number, method: string, params: object): Promise<unknown> {
  await server.send({ jsonrpc: '2.0', id, method, params });
  const { result, error } = await server.receive((message) => message.id === id && message.method === undefined);
  if (error) throw new Error(error.message);
  return result;
}
