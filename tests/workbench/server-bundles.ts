import { fork } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { launchBrowser } from './workbench.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const bundles = join(root, 'packages/extension/dist');

/** A JSON-RPC message, as far as these tests read it. */
export interface Message {
  id?: number;
  method?: string;
  params?: { uri?: string; diagnostics?: { message: string; code?: string | number }[] };
  result?: unknown;
  error?: { message: string };
}

/** A started language server that takes and gives messages. */
export interface Server {
  send(message: object): void | Promise<void>;
  /** The first message, come or to come, that fits. */
  receive(fits: (message: Message) => boolean): Promise<Message>;
  stop(): Promise<void>;
}

/** The Nodes that the desktop server has to start on: the running one, and those .scripts/nodes-setup.mjs fetches. */
export const NODES = ['the Node that runs the tests', 'Node 22', 'Node 24'] as const;

/**
 * Path of one of them.
 * @throws Error if it has not been fetched
 */
export function pathOf(name: (typeof NODES)[number]): string {
  if (name === NODES[0]) return process.execPath;
  const [, major = ''] = name.split(' ');
  const folder = join(root, '.cache/nodes');
  const fetched = existsSync(folder) ? readdirSync(folder) : [];
  const path = fetched
    .filter((version) => version.split('.')[0] === major)
    .flatMap((version) => ['x64', 'arm64'].map((kind) => `${version}/node_modules/node-linux-${kind}/bin/node`))
    .map((below) => join(folder, below))
    .find((each) => existsSync(each));
  if (path === undefined) throw new Error(`no ${name} in .cache/nodes; run: node .scripts/nodes-setup.mjs`);
  return path;
}

/** Starts the desktop bundle on the given Node, over the channel that an extension host uses. */
export function startOnNode(path: string): Server {
  const child = fork(join(bundles, 'server.cjs'), ['--node-ipc'], {
    execPath: path,
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  const box = mailbox();
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream?.on('data', (data) => {
      output += String(data);
    });
  }
  child.on('message', (message) => box.put(message as Message));
  child.on('exit', (code) => box.fail(new Error(`the server ended with ${code}:\n${output}`)));
  return {
    send: (message) => void child.send(message),
    receive: box.take,
    async stop() {
      child.removeAllListeners('exit');
      if (child.exitCode !== null) return;
      child.kill();
      await once(child, 'exit');
    },
  };
}

/** Starts the browser bundle as a worker of an empty page. */
export async function startInBrowser(): Promise<BrowserServer> {
  const browser = await launchBrowser();
  const page = await browser.newPage();
  const box = mailbox();
  const site = await serveBundles();
  page.on('pageerror', (error) => box.fail(error));
  await page.exposeFunction('serverSays', (message: Message) => box.put(message));
  await page.exposeFunction('serverFails', (message: string) => box.fail(new Error(message)));
  await page.goto(`${site.address}/`);
  await page.evaluate(() => {
    const scope = globalThis as unknown as Record<string, (value: unknown) => void> & { server: Worker };
    scope.server = new Worker('/server-worker.js');
    scope.server.onmessage = (event) => scope.serverSays?.(event.data);
    scope.server.onerror = (event) => scope.serverFails?.(event.message);
  });
  return {
    send: (message) =>
      page.evaluate((sent) => (globalThis as unknown as { server: Worker }).server.postMessage(sent), message),
    receive: box.take,
    async stop() {
      await browser.close();
      site.close();
    },
    later: `${site.address}/later/`,
  };
}

export interface BrowserServer extends Server {
  /** Where it finds what it loads late, as its client tells it. */
  readonly later: string;
}

/** The bundles on a site of their own, with an empty page: a worker's worker asks for them past all that a page can see. */
async function serveBundles() {
  const kinds: Readonly<Record<string, string>> = { '.wasm': 'application/wasm', '': 'text/html' };
  const site = createServer(({ url = '/' }, response) => {
    const path = join(bundles, new URL(url, 'http://here').pathname);
    const ending = extname(path);
    const there = ending !== '' && existsSync(path);
    response.writeHead(there || ending === '' ? 200 : 404, { 'content-type': kinds[ending] ?? 'text/javascript' });
    response.end(there ? readFileSync(path) : '<!doctype html><title>worker</title>');
  }).listen(0, '127.0.0.1');
  await once(site, 'listening');
  const { port } = site.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}`, close: () => site.close() };
}

function mailbox() {
  const messages: Message[] = [];
  const waiting = new Set<{
    fits: (message: Message) => boolean;
    give: (message: Message) => void;
    fail: (error: Error) => void;
  }>();
  let broken: Error | undefined;
  return {
    put(message: Message) {
      messages.push(message);
      for (const reader of waiting) {
        if (!reader.fits(message)) continue;
        waiting.delete(reader);
        reader.give(message);
      }
    },
    fail(error: Error) {
      broken = error;
      for (const reader of waiting) reader.fail(error);
      waiting.clear();
    },
    take(fits: (message: Message) => boolean): Promise<Message> {
      const there = messages.find(fits);
      if (there !== undefined) return Promise.resolve(there);
      if (broken !== undefined) return Promise.reject(broken);
      return new Promise((give, fail) => waiting.add({ fits, give, fail }));
    },
  };
}
