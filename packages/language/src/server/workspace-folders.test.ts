import { afterEach, describe, expect, test } from 'vitest';
import { connect, example, exampleUri } from './client.fixture.js';

type Client = Awaited<ReturnType<typeof connect>>;
const clients: Client[] = [];
afterEach(() => Promise.all(clients.splice(0).map((client) => client.end())));

async function started(): Promise<Client> {
  const client = await connect({}, { workspace: { workspaceFolders: true } });
  clients.push(client);
  // Answered once the built-in library has been read, which is a change of files as well.
  await client.ask('workspace/symbol', '', { query: 'none' });
  return client;
}

async function close(client: Client, name: string): Promise<void> {
  const taken = client.takenIn();
  await client.tell('textDocument/didClose', { textDocument: { uri: exampleUri(name) } });
  await taken;
}

async function change(client: Client, event: { added?: string[]; removed?: string[] }): Promise<void> {
  const folders = (names: string[] = []) => names.map((name) => ({ uri: exampleUri(name), name: name || 'examples' }));
  const taken = client.takenIn();
  await client.tell('workspace/didChangeWorkspaceFolders', {
    event: { added: folders(event.added), removed: folders(event.removed) },
  });
  await taken;
}

describe('files outside of every folder', () => {
  test('are let go of once they are closed, with what only they import', async () => {
    const client = await started();
    await client.type('periodicals.joinery', example('periodicals.joinery'));
    await client.type('bench.joinery', example('bench.joinery'));
    expect(client.held()).toEqual(['bench.joinery', 'periodicals.joinery', 'shop.joinery']);
    await close(client, 'periodicals.joinery');
    expect(client.held()).toEqual(
      example('bench.joinery').includes('"shop.joinery"') ? ['bench.joinery', 'shop.joinery'] : ['bench.joinery'],
    );
    await close(client, 'bench.joinery');
    expect(client.held()).toEqual([]);
    // Whoever opens one again finds it as before.
    expect(await client.type('bookcase.joinery', example('bookcase.joinery'))).toMatchObject({ state: 'fits' });
  });

  test('stay while an open one imports them', async () => {
    const client = await started();
    await client.type('shop.joinery', example('shop.joinery'));
    await client.type('periodicals.joinery', example('periodicals.joinery'));
    await close(client, 'shop.joinery');
    expect(client.held()).toEqual(['periodicals.joinery', 'shop.joinery']);
  });
});

describe('a folder', () => {
  test('that is added is read, and what it has is found', async () => {
    const client = await started();
    await client.type('broken/elsewhere.joinery', 'import "no-such.joinery"\n');
    await change(client, { added: [''] });
    expect(client.held().length).toBeGreaterThan(5);
    const found = await client.ask<{ name: string }[]>('workspace/symbol', '', { query: 'Periodicals' });
    expect(found.map(({ name }) => name)).toContain('Periodicals');
    await close(client, 'broken/elsewhere.joinery');
    expect(client.held()).toContain('periodicals.joinery');
  });

  test('that is taken out goes with its files, but for those that are open and what they import', async () => {
    const client = await started();
    await change(client, { added: [''] });
    await client.type('periodicals.joinery', example('periodicals.joinery'));
    await change(client, { removed: [''] });
    expect(client.held()).toEqual(['periodicals.joinery', 'shop.joinery']);
  });

  test('that lies in another stays with it', async () => {
    const client = await started();
    await change(client, { added: ['', 'broken'] });
    const all = client.held();
    await client.tell('workspace/didChangeWorkspaceFolders', {
      event: { added: [], removed: [{ uri: exampleUri('broken'), name: 'broken' }] },
    });
    // What is typed is taken in after whatever the folder has changed.
    await client.type('periodicals.joinery', example('periodicals.joinery'));
    expect(client.held()).toEqual(all);
  });
});
